/** The room and everything that stands in it. */
export const Room = () => null;
