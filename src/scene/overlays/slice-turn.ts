/** How far a signed pressure is turned as drawn just now, radians: shared by the map and the number under the pointer. */
export const sliceTurn = { radians: 0 };
