/**
 * How each kind of piece is drawn: greys of sand and one warm tone for metal. The greys differ
 * from each other and from the metal in lightness and hatching, so that nothing needs its colour.
 */
import { CanvasTexture, RepeatWrapping, SRGBColorSpace, type Texture } from 'three';
import type { PieceKind } from '../answers';

/** Lines across what is cut: none, leaning right or left, or both. */
type Hatch = 'none' | 'right' | 'left' | 'both';

/** Tone of a piece's skin, and of what is cut. */
export interface Tone {
  skin: string;
  cut: string;
  hatch: Hatch;
}

/** Tones, by what a piece is. */
export const TONES: Record<PieceKind, Tone> = {
  cope: { skin: '#d8d3c8', cut: '#eae6dc', hatch: 'right' },
  drag: { skin: '#bdb6a9', cut: '#d5cfc2', hatch: 'left' },
  core: { skin: '#8d877c', cut: '#a7a196', hatch: 'both' },
  casting: { skin: '#a8552a', cut: '#8f4420', hatch: 'none' },
  rigging: { skin: '#c98a5e', cut: '#b0673b', hatch: 'none' },
};

/** Metal under a map: cut it is hatched on paper, since the tones are those of the map. */
export const UNDER_A_MAP: Tone = { skin: '#fcfbf7', cut: '#fcfbf7', hatch: 'right' };

/** Ink of edges and hatching. */
export const INK = '#1c1a17';

/** Side of a tile of hatching, pixels. */
const TILE = 64;

/** A tile of what is cut, to be laid side by side. */
export function hatching(tone: Tone): Texture {
  const tile = document.createElement('canvas');
  tile.width = TILE;
  tile.height = TILE;
  const pen = tile.getContext('2d');
  if (pen) {
    pen.fillStyle = tone.cut;
    pen.fillRect(0, 0, TILE, TILE);
    pen.strokeStyle = INK;
    pen.lineWidth = TILE / 14;
    if (tone.hatch === 'right' || tone.hatch === 'both') lines(pen, 1);
    if (tone.hatch === 'left' || tone.hatch === 'both') lines(pen, -1);
  }
  const texture = new CanvasTexture(tile);
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  return texture;
}

/** A slanting line through the tile, and through its neighbours' corners. */
function lines(pen: CanvasRenderingContext2D, lean: 1 | -1): void {
  pen.beginPath();
  for (const shift of [-TILE, 0, TILE]) {
    pen.moveTo(shift - TILE, lean === 1 ? 2 * TILE : -TILE);
    pen.lineTo(shift + 2 * TILE, lean === 1 ? -TILE : 2 * TILE);
  }
  pen.stroke();
}
