/** What is used of WebAssembly: the pure folders compile without the browser's types. */
declare const WebAssembly:
  | {
      Module: new (bytes: Uint8Array) => object;
      Instance: new (module: object, imports: object) => { readonly exports: object };
    }
  | undefined;

export interface KernelMemory {
  readonly buffer: ArrayBuffer;
  grow(pages: number): number;
}

export const PAGE_BYTES = 65_536;

const DIGITS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** The bytes of a base64 text (RFC 4648, section 4). */
export const bytesOf = (base64: string): Uint8Array => {
  const digits = base64.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((digits.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let count = 0;
  for (const digit of digits) {
    held = ((held << 6) | DIGITS.indexOf(digit)) & 0xffffff;
    bits += 6;
    if (bits >= 8) {
      bits -= 8;
      bytes[count] = (held >> bits) & 0xff;
      count += 1;
    }
  }
  return bytes;
};

/**
 * The exports of a kernel given as base64, `Exports` being what its source exports; null where WebAssembly is not to be had or does
 * not know 128-bit lanes.
 */
export const compiledKernel = <Exports extends object>(base64: string): Exports | null => {
  try {
    if (WebAssembly === undefined) return null;
    return new WebAssembly.Instance(new WebAssembly.Module(bytesOf(base64)), {}).exports as Exports;
  } catch {
    return null;
  }
};
