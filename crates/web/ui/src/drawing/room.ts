/** Room round the flat drawing. */

/**
 * Room on each side, as a share of the width. The drawing is measured with the letters of the
 * printed sheet; those of a browser may be a fifth wider, and would be cut off at the edge.
 */
export const ROOM = 0.05;

/** A drawing with room round it; it fills whatever place it is given. */
export function withRoom(svg: string): string {
  const head = /^<svg[^>]*>/.exec(svg)?.[0];
  const box = /viewBox="([^"]*)"/.exec(head ?? '')?.[1]?.split(/[ ,]+/).map(Number);
  if (!head || box?.length !== 4) return svg;
  const [left = 0, top = 0, width = 0, height = 0] = box;
  const room = ROOM * width;
  const wider = [left - room, top, width + 2 * room, height].map((mm) => mm.toFixed(3));
  const roomy = head
    .replace(/ (width|height)="[^"]*"/g, '')
    .replace(/viewBox="[^"]*"/, `viewBox="${wider.join(' ')}"`);
  return roomy + svg.slice(head.length);
}
