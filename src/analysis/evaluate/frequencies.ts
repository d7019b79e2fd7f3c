/** What `--frequencies` accepts: as much as the engine can do and a reader can hold. */
const LEAST_HZ = 1;
const MOST_HZ = 600;
const MOST_COUNT = 2000;

export type FrequencyList =
  | { readonly ok: true; readonly frequenciesHz: Float64Array }
  | { readonly ok: false; readonly why: string };

const refusal = (why: string): FrequencyList => ({ ok: false, why });

const NUMBER = /^\d{1,6}(\.\d{1,6})?$/;

/** "20:200:5" as 20, 25, ... 200: start, stop and step in hertz, both ends included where the step reaches the stop. */
export const parseFrequencies = (text: string): FrequencyList => {
  const parts = text.split(':');
  if (parts.length !== 3 || !parts.every((part) => NUMBER.test(part)))
    return refusal('three plain numbers in hertz, start:stop:step, such as 20:200:5');
  const [start, stop, step] = parts.map(Number);
  if (start < LEAST_HZ || stop > MOST_HZ) return refusal(`frequencies from ${LEAST_HZ} to ${MOST_HZ} Hz`);
  if (start > stop) return refusal('a start that is not above the stop');
  if (step <= 0) return refusal('a step above 0');
  const count = Math.floor((stop - start) / step + 1e-9) + 1;
  if (count > MOST_COUNT) return refusal(`at most ${MOST_COUNT} frequencies; these are ${count}`);
  return { ok: true, frequenciesHz: Float64Array.from({ length: count }, (_, i) => start + i * step) };
};
