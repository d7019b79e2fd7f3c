/** Something worth saying about a file that was accepted. */
export type Notice =
  | {
      /** Keys this version does not know: kept and written back. */
      readonly kind: 'unknown-keys';
      /** The first of them, as paths. */
      readonly paths: readonly string[];
      /** How many there are beyond those. */
      readonly more: number;
    }
  /** Edges of a rectangular plan were given treatments of their own, which only a polygon's edges can carry. */
  | { readonly kind: 'walls-without-polygon' };
