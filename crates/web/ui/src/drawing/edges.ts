/** The sharp edges of a skin. */

/**
 * Sides between facets that turn by more than so many degrees, and sides of one facet alone:
 * x y z of both ends of each, mm.
 */
export function sharpEdges(points: Float32Array, facets: Uint32Array, degrees: number): number[] {
  const flat = Math.cos((Math.PI / 180) * degrees);
  const normals = normalsOf(points, facets);
  const count = points.length / 3;
  /** By both ends of a side, the facet that has it and has found no neighbour yet. */
  const open = new Map<number, number>();
  const ends: number[] = [];
  const draw = (from: number, to: number) => {
    for (const point of [from, to]) {
      for (let axis = 0; axis < 3; axis += 1) ends.push(points[3 * point + axis] ?? 0);
    }
  };
  for (let at = 0; at < facets.length; at += 1) {
    const facet = Math.floor(at / 3);
    const from = facets[at] ?? 0;
    const to = facets[3 * facet + ((at + 1) % 3)] ?? 0;
    const key = Math.min(from, to) * count + Math.max(from, to);
    const other = open.get(key);
    if (other === undefined) {
      open.set(key, facet);
      continue;
    }
    open.delete(key);
    if (along(normals, facet, other) < flat) draw(from, to);
  }
  for (const key of open.keys()) draw(Math.floor(key / count), key % count);
  return ends;
}

function normalsOf(points: Float32Array, facets: Uint32Array): Float32Array {
  const normals = new Float32Array(facets.length);
  for (let facet = 0; facet < facets.length; facet += 3) {
    const corner = (at: number, axis: number) => points[3 * (facets[facet + at] ?? 0) + axis] ?? 0;
    const side = (at: number, axis: number) => corner(at, axis) - corner(0, axis);
    const normal = [0, 1, 2].map((axis) => {
      const [b, c] = [(axis + 1) % 3, (axis + 2) % 3];
      return side(1, b) * side(2, c) - side(1, c) * side(2, b);
    });
    const size = Math.hypot(...normal) || 1;
    normal.forEach((part, axis) => {
      normals[facet + axis] = part / size;
    });
  }
  return normals;
}

const along = (normals: Float32Array, one: number, other: number) =>
  [0, 1, 2].reduce(
    (sum, axis) => sum + (normals[3 * one + axis] ?? 0) * (normals[3 * other + axis] ?? 0),
    0,
  );
