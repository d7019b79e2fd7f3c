import { byFrequency, id, label, locked, number, pointM, sizeM, z } from './values.ts';

/** An ITU-R BS.2051 channel label such as M+030, U-110, T+000, UH+180, B+045 or LFE1. */
const channel = z.string().regex(/^(?:(?:M|U|UH|T|B)[+-]\d{3}|M[+-]SC|LFE[12]?)$/, {
  error: 'an ITU-R BS.2051 label such as M+030 (30 degrees to the left at ear height)',
});

export const loudspeaker = z.looseObject({
  id,
  channel,
  atM: pointM,
  aim: z.union([z.literal('reference'), pointM]).optional(),
  pattern: z.enum(['box', 'omni', 'dipole', 'bipole']).default('box'),
  mount: label.default('stand'),
  sensitivityDb: number(60, 120).default(88),
  maxWatts: number(1, 10_000).default(100),
  lowLimitHz: number(10, 500).default(60),
  sizeM: sizeM.default([0.2, 0.35, 0.25]),
  locked,
});

export const subwoofer = z.looseObject({
  id,
  atM: pointM,
  sizeM: sizeM.default([0.4, 0.4, 0.4]),
  gainDb: number(-60, 20).default(0),
  delayMs: number(0, 200).default(0),
  inverted: z.boolean().default(false),
  highPassHz: number(5, 100).default(20),
  maxOutput: z
    .looseObject({
      bandsDb: byFrequency(40, 160),
      space: z.enum(['half', 'full']).default('half'),
      kind: z.enum(['peak', 'rms']).default('peak'),
    })
    .optional(),
  locked,
});

export const bass = z
  .looseObject({
    crossoverHz: number(30, 300).default(80),
    lfeGainDb: number(-20, 20).default(10),
    lfeLimitHz: number(40, 300).default(120),
  })
  .prefault({});
