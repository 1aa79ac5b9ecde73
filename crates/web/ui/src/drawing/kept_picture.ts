/** The picture as it is kept: the canvas, with the numbers of its map and its legend. */
import type { MapHead } from '../answers';
import { asColour, tones, valueText } from './bands';
import type { Offered } from './numbers';

/** What is written over the canvas. */
export interface Written {
  head: MapHead;
  numbers: readonly Offered[];
  language: string;
}

/** Height of the legend below the picture, pixels of the page. */
const BELOW = 46;

/** Letters, pixels of the page. */
const LETTERS = 13;

/** The picture as a PNG; `canvas` has just been drawn. */
export async function keptPicture(
  canvas: HTMLCanvasElement,
  written: Written | null,
): Promise<Blob | null> {
  if (!written) return new Promise((done) => canvas.toBlob(done, 'image/png'));
  const fine = canvas.width / canvas.clientWidth;
  const page = new OffscreenCanvas(canvas.width, canvas.height + BELOW * fine);
  const pen = page.getContext('2d');
  if (!pen) return null;
  pen.fillStyle = '#fcfbf7';
  pen.fillRect(0, 0, page.width, page.height);
  pen.drawImage(canvas, 0, 0);
  pen.scale(fine, fine);
  pen.font = `${LETTERS}px serif`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  for (const { x, y, value, marked } of written.numbers) {
    const text = valueText(value, written.language);
    const half = pen.measureText(text).width / 2 + 3;
    pen.fillStyle = '#fcfbf7';
    pen.fillRect(x - half, y - LETTERS / 2 - 2, 2 * half, LETTERS + 4);
    pen.strokeStyle = '#1c1a17';
    if (marked) pen.strokeRect(x - half, y - LETTERS / 2 - 2, 2 * half, LETTERS + 4);
    pen.fillStyle = '#1c1a17';
    pen.fillText(text, x, y);
  }
  legend(pen, canvas.clientWidth, canvas.clientHeight, written);
  return page.convertToBlob({ type: 'image/png' });
}

function legend(
  pen: OffscreenCanvasRenderingContext2D,
  width: number,
  top: number,
  { head, language }: Written,
): void {
  const bands = tones(head.lines.length + 1);
  const wide = (width - 60) / bands.length;
  const ends = [head.low, ...head.lines, head.high];
  bands.forEach((tone, band) => {
    pen.fillStyle = asColour(tone);
    pen.fillRect(20 + band * wide, top + 6, wide, 14);
    pen.strokeRect(20 + band * wide, top + 6, wide, 14);
  });
  pen.fillStyle = '#1c1a17';
  ends.forEach((end, at) => {
    const unit = at === ends.length - 1 ? ` ${head.unit}` : '';
    pen.fillText(valueText(end, language) + unit, 20 + at * wide, top + 32);
  });
}
