/** A map over the drawing, as it is sent: a head, a skin with values at its corners, a field. */
import type { FieldHead, MapHead } from '../answers';
import { readHead, WORD, wholly } from './packed';

/** Values over a box of equal cubes, x quickest; not a number where there is none. */
export interface Field extends FieldHead {
  values: Float32Array;
}

/** A skin of its own, with a value at each corner of each facet. */
export interface MapSkin {
  points: Float32Array;
  facets: Uint32Array;
  values: Float32Array;
}

/** A map. */
export interface DrawnMap {
  head: MapHead;
  /** What it lies on; on the metal of the mould where there is none. */
  skin: MapSkin | null;
  field: Field | null;
}

/** Reads a map; the arrays lie in the bytes themselves. */
export function readMap(bytes: ArrayBuffer): DrawnMap {
  const { head, start } = readHead<MapHead>(bytes, 'the numbers of the map');
  let at = start;
  const floats = (count: number): Float32Array => {
    const all = new Float32Array(bytes, at, count);
    at += WORD * count;
    return all;
  };
  const points = head.skin?.points ?? 0;
  const facets = head.skin?.facets ?? 0;
  const cells = head.field?.count.reduce((all, along) => all * along, 1) ?? 0;
  wholly(bytes, start + WORD * (3 * points + 6 * facets + cells), 'the numbers of the map');
  const skin = head.skin && {
    points: floats(3 * points),
    facets: new Uint32Array(floats(3 * facets).buffer, at - WORD * 3 * facets, 3 * facets),
    values: floats(3 * facets),
  };
  const field = head.field && { ...head.field, values: floats(cells) };
  return { head, skin, field };
}
