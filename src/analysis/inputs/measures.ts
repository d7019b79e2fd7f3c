/** How lengths and areas are written in a sentence: the report's way, unless a person's is handed in. */
export interface Measures {
  length(metres: number): string;
  area(squareMetres: number): string;
}

/** As the report writes them, which holds SI units only. */
export const SI: Measures = {
  length: (metres) => `${metres.toFixed(2)} m`,
  area: (squareMetres) => `${squareMetres.toFixed(1)} m²`,
};
