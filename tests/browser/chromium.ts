import { execFileSync } from 'node:child_process';
import { accessSync, constants } from 'node:fs';

const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/usr/bin/google-chrome-stable',
];

/** Software rendering, no sandbox (tests often run as root), nothing that looks for the network by itself. */
const ARGUMENTS = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
];

const runs = (path: string): boolean => {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
};

const lacksSystemLibraries = (): boolean => {
  try {
    return !execFileSync('ldconfig', ['-p'], { encoding: 'utf8' }).includes('libnss3.so');
  } catch {
    return true;
  }
};

/** For pages that draw no room: their letters and boxes are put together without a graphics library in between. */
export const WITHOUT_GRAPHICS = ['--disable-gpu-compositing'];

export interface Browser {
  readonly executablePath: string;
  readonly args: string[];
}

/** The browser of the tests: the one named in PARTERRE_BROWSER, one installed here, or the one inside a package. */
export const findBrowser = async (): Promise<Browser> => {
  const named = process.env.PARTERRE_BROWSER;
  const found = named === 'bundled' ? undefined : (named ?? PLACES.find(runs));
  if (found) return { executablePath: found, args: ARGUMENTS };
  // The package unpacks the libraries it needs only where it believes to run in its usual surroundings.
  if (lacksSystemLibraries()) process.env.AWS_EXECUTION_ENV ??= 'AWS_Lambda_nodejs22.x';
  const { default: bundled } = await import('@sparticuz/chromium');
  return { executablePath: await bundled.executablePath(), args: ARGUMENTS };
};
