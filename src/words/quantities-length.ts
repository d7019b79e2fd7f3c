export type UnitSystem = 'metric' | 'imperial';

const METRES_PER_INCH = 0.0254;
const INCHES_PER_FOOT = 12;

const NUMBER = String.raw`(\d+(?:\.\d+)?|\.\d+)`;
const FRACTION = String.raw`(\d+) ?/ ?(\d+)`;

/** A number with a fraction after it, or either alone: `6`, `6 1/2`, `6-1/2`, `1/2`. Three groups. */
const MIXED = String.raw`(?:${NUMBER}(?![\d/])(?: ?[- ] ?(?=\d+ ?/))?)?(?:${FRACTION})?`;

const METRIC_UNITS: Readonly<Record<string, number>> = {
  m: 1,
  metre: 1,
  metres: 1,
  meter: 1,
  meters: 1,
  cm: 0.01,
  centimetre: 0.01,
  centimetres: 0.01,
  centimeter: 0.01,
  centimeters: 0.01,
  mm: 0.001,
  millimetre: 0.001,
  millimetres: 0.001,
  millimeter: 0.001,
  millimeters: 0.001,
};

const METRIC = new RegExp(`^${NUMBER} ?([a-z]+)(?: ?${NUMBER} ?([a-z]+))?$`);
const BARE = new RegExp(`^${MIXED}$`);
const FEET = new RegExp(`^${MIXED} ?(?:'|ft\\.?|foot|feet)(?: ?[-,]? ?(.+))?$`);
const INCHES = new RegExp(`^${MIXED} ?(?:"|in\\.?|inch|inches)?$`);

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

/** More than any length needs: what is longer is refused unread. */
export const LONGEST_INPUT = 60;

/** One spelling for every space, sign, prime and fraction a person or a program may have put in; lower case. */
export const plainText = (text: string): string =>
  text
    .replaceAll(/[½¼¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${FRACTION_SIGNS[sign]}`)
    .replaceAll('\u2044', '/')
    .replaceAll(/[\u2212\u2013\u2010\u2011\uff0d]/g, '-')
    .replaceAll(/[\u2032\u2019\u2018\u00b4`]/g, "'")
    .replaceAll(/[\u2033\u201d\u201c]|''/g, '"')
    .replaceAll(/\s+/g, ' ')
    .trim()
    .toLowerCase();

const mixed = (whole: string | undefined, over: string | undefined, under: string | undefined): number | undefined => {
  if (whole === undefined && over === undefined) return undefined;
  return Number(whole ?? 0) + (over === undefined ? 0 : Number(over) / Number(under));
};

const metricLength = (text: string): number | undefined => {
  const found = METRIC.exec(text);
  if (!found) return undefined;
  const [, first, unit, second, smaller] = found;
  const scale = METRIC_UNITS[unit];
  if (scale === undefined) return undefined;
  if (second === undefined) return Number(first) * scale;
  const smallScale = METRIC_UNITS[smaller];
  return smallScale === undefined || smallScale >= scale
    ? undefined
    : Number(first) * scale + Number(second) * smallScale;
};

const inchesIn = (text: string): number | undefined => {
  const found = INCHES.exec(text);
  return found ? mixed(found[1], found[2], found[3]) : undefined;
};

const imperialLength = (text: string): number | undefined => {
  const found = FEET.exec(text);
  if (!found) {
    const inches = /["a-z]/.test(text) ? inchesIn(text) : undefined;
    return inches === undefined ? undefined : inches * METRES_PER_INCH;
  }
  const feet = mixed(found[1], found[2], found[3]);
  const inches = found[4] === undefined ? 0 : inchesIn(found[4]);
  if (feet === undefined || inches === undefined) return undefined;
  return (feet * INCHES_PER_FOOT + inches) * METRES_PER_INCH;
};

const BARE_UNIT_M: Readonly<Record<UnitSystem, number>> = { metric: 1, imperial: INCHES_PER_FOOT * METRES_PER_INCH };

/** `3,800 mm` is three metres eighty to one reader and under four millimetres to another: neither is guessed. */
const AMBIGUOUS_COMMA = /\d,\d{3}(?!\d)(?! ?m(?:$|e))/;

/** The decimal point for every comma that is one; undefined where a comma could also part thousands. */
export const decimalPoints = (text: string): string | undefined => {
  if (!text.includes(',')) return text;
  if (AMBIGUOUS_COMMA.test(text) || /,.*,/.test(text) || /\.\d*,|,\d*\./.test(text)) return undefined;
  return text.replaceAll(/(\d),(?=\d)/g, '$1.').replaceAll(/^,(?=\d)/g, '.');
};

/**
 * A length in metres from what a person typed, or undefined: `3.8 m`, `3,8 m`, `380 cm`, `3 m 80 cm`, `12'6"`,
 * `12 ft 6 1/2 in`, `150"`, `12.5 ft`. A bare number is in metres, or in feet where feet are shown.
 */
export const parseLength = (input: string, units: UnitSystem): number | undefined => {
  if (input.length > LONGEST_INPUT) return undefined;
  const plain = plainText(input);
  const sign = plain.startsWith('-') ? -1 : 1;
  const text = decimalPoints(plain.replace(/^[-+] ?/, ''));
  if (text === undefined) return undefined;
  const bare = BARE.exec(text);
  const bareValue = bare ? mixed(bare[1], bare[2], bare[3]) : undefined;
  const metres =
    bareValue === undefined ? (metricLength(text) ?? imperialLength(text)) : bareValue * BARE_UNIT_M[units];
  if (metres === undefined || !Number.isFinite(metres)) return undefined;
  return metres === 0 ? 0 : sign * metres;
};

export const MINUS = '\u2212';

/** Stands where a number has no finite value. */
export const NO_NUMBER = '\u2013';

/** A number with a fixed count of decimals and a true minus sign; nothing is ever minus nought. */
export const fixed = (value: number, decimals: number): string => {
  if (!Number.isFinite(value)) return NO_NUMBER;
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `${MINUS}${text}` : text;
};

const DEFAULT_EIGHTHS = 8;

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/** Feet, inches and the nearest fraction of an inch: `8 ft 1 1/4 in`, `6 1/2 in`, `8 ft`. */
export const formatImperial = (metres: number, perInch: number = DEFAULT_EIGHTHS): string => {
  if (!Number.isFinite(metres)) return NO_NUMBER;
  const parts = Math.round((Math.abs(metres) / METRES_PER_INCH) * perInch);
  const feet = Math.floor(parts / (perInch * INCHES_PER_FOOT));
  const rest = parts - feet * perInch * INCHES_PER_FOOT;
  const whole = Math.floor(rest / perInch);
  const over = rest - whole * perInch;
  const divisor = commonDivisor(over, perInch);
  const fraction = over === 0 ? '' : `${over / divisor}/${perInch / divisor}`;
  const inches = [whole === 0 && fraction !== '' ? '' : String(whole), fraction]
    .filter((part) => part !== '')
    .join(' ');
  const words = [feet === 0 ? '' : `${feet} ft`, rest === 0 && feet > 0 ? '' : `${inches} in`];
  const sign = metres < 0 && parts > 0 ? MINUS : '';
  return `${sign}${words.filter((part) => part !== '').join(' ')}`;
};

/** A length for the eye: centimetres for metres (`2.47 m`), or feet and inches to the nearest eighth. */
export const formatLength = (metres: number, units: UnitSystem): string =>
  units === 'imperial' || !Number.isFinite(metres) ? formatImperial(metres) : `${fixed(metres, 2)} m`;
