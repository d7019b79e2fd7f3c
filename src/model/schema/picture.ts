import { coordinate, number, pointM, wholeNumber, z } from './values.ts';

export const picture = z
  .looseObject({
    kind: z.enum(['panel', 'screen']).default('panel'),
    aspect: number(0.5, 4).default(1.7778),
    widthM: number(0.3, 12).default(1.6),
    centreXM: coordinate.default(0),
    bottomM: number(0, 10).default(0.75),
    offFrontWallM: number(0, 10).default(0.06),
    acousticallyTransparent: z.boolean().default(false),
    pixels: z.tuple([wholeNumber(16, 32_768), wholeNumber(16, 32_768)]).default([3840, 2160]),
    formats: z
      .array(z.looseObject({ aspect: number(0.5, 4), method: z.enum(['letterbox', 'mask', 'zoom', 'anamorphic']) }))
      .max(16)
      .default([]),
    projector: z
      .looseObject({ lumens: number(1, 200_000), calibratedFraction: number(0.05, 1).default(0.6), atM: pointM })
      .optional(),
    gain: number(0.1, 10).default(1),
  })
  .prefault({});
