/** The outline of what a plane cuts, straight from the facets. */

/** A plane that stands upright on an axis: 0 for x, 1 for y, 2 for z; `at` in mm. */
export interface Upright {
  axis: 0 | 1 | 2;
  at: number;
}

/**
 * Every facet that the plane goes through gives one line; x y z of both ends, mm. A corner in the
 * plane counts as above it, so that a closed skin gives a closed outline.
 */
export function outline(
  points: Float32Array,
  facets: Uint32Array,
  { axis, at }: Upright,
): number[] {
  const ends: number[] = [];
  const height = (corner: number) => (points[3 * corner + axis] ?? 0) - at;
  for (let facet = 0; facet + 2 < facets.length; facet += 3) {
    for (let side = 0; side < 3; side += 1) {
      const from = facets[facet + side] ?? 0;
      const to = facets[facet + ((side + 1) % 3)] ?? 0;
      const below = height(from);
      const above = height(to);
      if (below < 0 === above < 0) continue;
      const share = below / (below - above);
      for (let along = 0; along < 3; along += 1) {
        const start = points[3 * from + along] ?? 0;
        const end = points[3 * to + along] ?? 0;
        ends.push(along === axis ? at : start + share * (end - start));
      }
    }
  }
  return ends;
}
