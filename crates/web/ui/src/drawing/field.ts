/** Values within the metal: at a place of its skin, and over a plane that cuts it. */
import type { Field } from './map';
import type { Upright } from './section';

/** Cells round a place in which its value is looked for: the skin may lie beside its cell. */
const REACH = 2;

/** Cells by which what is cut is filled beyond the outermost ones: half of one may be missing. */
const RIM = 2;

/** The value nearest to a place; not a number where there is none. */
export function valueNear(field: Field, at: ArrayLike<number>): number {
  const place = [0, 1, 2].map(
    (axis) => ((at[axis] ?? 0) - (field.origin_mm[axis] ?? 0)) / field.size_mm - 0.5,
  );
  const [i = 0, j = 0, k = 0] = place.map(Math.round);
  let best = Infinity;
  let found = NaN;
  for (let dk = -REACH; dk <= REACH; dk += 1) {
    for (let dj = -REACH; dj <= REACH; dj += 1) {
      for (let di = -REACH; di <= REACH; di += 1) {
        const value = cellAt(field, i + di, j + dj, k + dk);
        if (Number.isNaN(value)) continue;
        const off = Math.hypot(
          i + di - (place[0] ?? 0),
          j + dj - (place[1] ?? 0),
          k + dk - (place[2] ?? 0),
        );
        if (off < best) [best, found] = [off, value];
      }
    }
  }
  return found;
}

/** A plane through a field as facets: their corners, and the value at each. */
export interface FieldCut {
  corners: Float32Array;
  values: Float32Array;
}

/** What an upright plane cuts of a field; filled a little beyond the metal, which is cut to it. */
export function cutOf(field: Field, plane: Upright): FieldCut {
  const across = plane.axis === 0 ? 1 : 0;
  const [wide, tall] = [(field.count[across] ?? 0) + 2 * RIM, (field.count[2] ?? 0) + 2 * RIM];
  const along = (plane.at - (field.origin_mm[plane.axis] ?? 0)) / field.size_mm - 0.5;
  let sheet = new Float32Array(wide * tall).fill(NaN);
  for (let v = RIM; v < tall - RIM; v += 1) {
    for (let u = RIM; u < wide - RIM; u += 1) {
      sheet[u + wide * v] = between(field, plane.axis, along, u - RIM, v - RIM);
    }
  }
  for (let turn = 0; turn < RIM; turn += 1) sheet = grown(sheet, wide, tall);
  const corners: number[] = [];
  const values: number[] = [];
  const put = (u: number, v: number) => {
    const place = [plane.at, plane.at, plane.at];
    place[across] = (field.origin_mm[across] ?? 0) + (u - RIM + 0.5) * field.size_mm;
    place[2] = (field.origin_mm[2] ?? 0) + (v - RIM + 0.5) * field.size_mm;
    corners.push(...place);
    values.push(sheet[u + wide * v] ?? NaN);
  };
  for (let v = 0; v + 1 < tall; v += 1) {
    for (let u = 0; u + 1 < wide; u += 1) {
      const all = [u + wide * v, u + 1 + wide * v, u + wide * (v + 1), u + 1 + wide * (v + 1)];
      if (all.some((cell) => Number.isNaN(sheet[cell] ?? NaN))) continue;
      put(u, v), put(u + 1, v), put(u, v + 1);
      put(u, v + 1), put(u + 1, v), put(u + 1, v + 1);
    }
  }
  return { corners: new Float32Array(corners), values: new Float32Array(values) };
}

function cellAt(field: Field, i: number, j: number, k: number): number {
  const [nx = 0, ny = 0, nz = 0] = field.count;
  if (i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz) return NaN;
  return field.values[i + nx * (j + ny * k)] ?? NaN;
}

/** The value between two layers of cells; that of the one that has some where only one has. */
function between(field: Field, axis: 0 | 1 | 2, along: number, u: number, v: number): number {
  const low = Math.floor(along);
  const at = (layer: number) =>
    axis === 0 ? cellAt(field, layer, u, v) : cellAt(field, u, layer, v);
  const [one, other] = [at(low), at(low + 1)];
  if (Number.isNaN(one)) return along - low > 0.5 ? other : NaN;
  if (Number.isNaN(other)) return along - low <= 0.5 ? one : NaN;
  return one + (along - low) * (other - one);
}

/** A sheet with the rim of its values grown by a cell. */
function grown(sheet: Float32Array, wide: number, tall: number): Float32Array<ArrayBuffer> {
  const wider = new Float32Array(sheet);
  for (let v = 0; v < tall; v += 1) {
    for (let u = 0; u < wide; u += 1) {
      if (!Number.isNaN(sheet[u + wide * v] ?? NaN)) continue;
      let [sum, count] = [0, 0];
      for (let dv = -1; dv <= 1; dv += 1) {
        for (let du = -1; du <= 1; du += 1) {
          const inside = u + du >= 0 && u + du < wide && v + dv >= 0 && v + dv < tall;
          const value = inside ? (sheet[u + du + wide * (v + dv)] ?? NaN) : NaN;
          if (!Number.isNaN(value)) [sum, count] = [sum + value, count + 1];
        }
      }
      if (count > 0) wider[u + wide * v] = sum / count;
    }
  }
  return wider;
}
