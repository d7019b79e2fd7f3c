import type { Fault } from '../../words/faults.ts';

export const LARGEST_FILE_BYTES = 5_000_000;

type Decoded = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly fault: Fault };

/** Every place this runs in has a TextDecoder; the pure folders are compiled without the library that declares it. */
interface Decoder {
  decode(bytes: Uint8Array): string;
}
const { TextDecoder: StrictDecoder } = globalThis as unknown as {
  TextDecoder: new (label: string, options: { fatal: boolean; ignoreBOM: boolean }) => Decoder;
};

const refuse = (holds: string, allowed: string): Decoded => ({ ok: false, fault: { path: 'file', holds, allowed } });

const PLAIN = 'JSON text in UTF-8 without a byte-order mark';

/** Encodings recognised by how a file begins: a mark, or the zero bytes beside its first, necessarily ASCII, character. */
const foreignEncoding = (bytes: Uint8Array): string | undefined => {
  const [a, b, c, d] = bytes;
  const starts = (...mark: number[]) => mark.every((byte, index) => bytes[index] === byte);
  if (starts(0xff, 0xfe, 0, 0) || starts(0, 0, 0xfe, 0xff)) return 'text in UTF-32';
  if (starts(0xff, 0xfe) || starts(0xfe, 0xff)) return 'text in UTF-16';
  if (starts(0xef, 0xbb, 0xbf)) return 'a byte-order mark before its text';
  if (bytes.length >= 4 && ((a === 0 && b === 0 && c === 0) || (b === 0 && c === 0 && d === 0)))
    return 'text in UTF-32';
  if (bytes.length >= 2 && (a === 0) !== (b === 0)) return 'text in UTF-16';
  return undefined;
};

/** A file's bytes as text, or why they are none. Nothing is decoded before the size is known to be within the limit. */
export const decodeText = (bytes: Uint8Array): Decoded => {
  if (bytes.length > LARGEST_FILE_BYTES)
    return refuse(`${bytes.length} bytes`, `up to ${LARGEST_FILE_BYTES} bytes (5 MB)`);
  if (bytes.length === 0) return refuse('nothing', 'a project file');
  const foreign = foreignEncoding(bytes);
  if (foreign) return refuse(foreign, PLAIN);
  try {
    return { ok: true, text: new StrictDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return refuse('bytes that are not UTF-8', PLAIN);
  }
};
