export const degreesOf = (radians: number): number => (radians * 180) / Math.PI;
export const radiansOf = (degrees: number): number => (degrees * Math.PI) / 180;

/** The same direction as `degrees`, in (-180, 180]. */
export const wrapDegrees = (degrees: number): number => {
  const turned = (((degrees + 180) % 360) + 360) % 360;
  return turned === 0 ? 180 : turned - 180;
};
