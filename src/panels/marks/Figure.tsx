import type { Shown } from '../figures.ts';

/** One number of the report: value strong, unit quiet. `field` is its place in the report. */
export const Figure = ({ field, shown, unit = true }: { field: string; shown: Shown; unit?: boolean }) => (
  <span
    className={shown.unit === '°' ? 'figure is-tight' : 'figure'}
    data-field={field}
    data-value={shown.value}
    data-step={shown.step}
  >
    <b>{shown.text}</b>
    {unit && shown.unit !== '' && <small>{shown.unit}</small>}
  </span>
);
