/** What a surface may be finished with. Absorption by the same ids stands in engines/acoustics/materials. */
export interface Finish {
  readonly id: string;
  /** A plain name, sentence case. */
  readonly name: string;
  /** The colour a renderer starts from, sRGB. */
  readonly colour: string;
}

export const FINISHES: readonly Finish[] = [
  { id: 'plasterboard-on-studs', name: 'Plasterboard on studs', colour: '#d9d1c4' },
  { id: 'plasterboard-deep-air', name: 'Plasterboard over a deep air space', colour: '#d9d1c4' },
  { id: 'plaster-on-brick', name: 'Smooth plaster on brick', colour: '#ddd5c7' },
  { id: 'brick', name: 'Bare brick', colour: '#9a5f48' },
  { id: 'brick-painted', name: 'Painted brick', colour: '#cfc6b8' },
  { id: 'concrete-block', name: 'Coarse concrete block', colour: '#8f8b84' },
  { id: 'concrete-block-painted', name: 'Painted concrete block', colour: '#c3bcb0' },
  { id: 'concrete', name: 'Concrete or terrazzo', colour: '#8a867f' },
  { id: 'linoleum-on-concrete', name: 'Linoleum on concrete', colour: '#7d6a58' },
  { id: 'parquet-on-concrete', name: 'Parquet on concrete', colour: '#8b5e3c' },
  { id: 'wood-floor-on-joists', name: 'Wood floor on joists', colour: '#94683f' },
  { id: 'carpet-thin', name: 'Thin carpet', colour: '#5c544c' },
  { id: 'carpet-on-concrete', name: 'Heavy carpet on concrete', colour: '#4d443e' },
  { id: 'carpet-on-felt', name: 'Heavy carpet on thick felt', colour: '#4a3f3b' },
  { id: 'carpet-latex-on-felt', name: 'Heavy carpet, latex backed, on thick felt', colour: '#4a3f3b' },
  { id: 'curtain-light', name: 'Light curtain, flat', colour: '#7a3a41' },
  { id: 'curtain-medium-draped', name: 'Medium curtain, draped to half', colour: '#6a2f38' },
  { id: 'curtain-heavy-draped', name: 'Heavy curtain, draped to half', colour: '#5a2630' },
  { id: 'glass-large-pane', name: 'Large pane of heavy glass', colour: '#a9bcc0' },
  { id: 'glass-window', name: 'Ordinary window glass', colour: '#b4c5c8' },
  { id: 'acoustic-tile', name: 'Acoustic tile', colour: '#d3cdc2' },
  { id: 'fibre-panel-25', name: 'Mineral fibre panel, 25 mm', colour: '#6f675c' },
  { id: 'fibre-panel-50', name: 'Mineral fibre panel, 50 mm', colour: '#6a6257' },
];

const byId = new Map(FINISHES.map((finish) => [finish.id, finish]));

export const finishOf = (id: string): Finish | undefined => byId.get(id);
