/** A peak filter as it is written down for a processor. */
export interface CsvFilter {
  readonly frequencyHz: number;
  readonly gainDb: number;
  readonly q: number;
}

const HEAD = 'frequencyHz,gainDb,q';

/** The filters as comma-separated values with a head line, decimal points, lines ended as RFC 4180 ends them. */
export const writeEqualiserCsv = (filters: readonly CsvFilter[]): string =>
  [HEAD, ...filters.map(({ frequencyHz, gainDb, q }) => [frequencyHz, gainDb, q].join(',')), ''].join('\r\n');

/** Reads what `writeEqualiserCsv` writes; null where the text is something else. */
export const readEqualiserCsv = (text: string): CsvFilter[] | null => {
  const [head, ...lines] = text.split(/\r?\n/).filter((line) => line.trim() !== '');
  if (head !== HEAD) return null;
  const filters = lines.map((line) => line.split(',').map(Number));
  if (filters.some((numbers) => numbers.length !== 3 || !numbers.every(Number.isFinite))) return null;
  return filters.map(([frequencyHz, gainDb, q]) => ({ frequencyHz, gainDb, q }));
};
