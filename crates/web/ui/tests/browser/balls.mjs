// Two balls of many facets, as the server packs solids: what a large mould asks of the page.

/** Bytes of a casting in a core, together of about so many facets. */
export function balls(facets) {
  const skins = [ball(50, facets / 2), ball(90, facets / 2)];
  const pieces = ['casting', 'core'].map((kind, at) => ({
    name: kind,
    label: kind,
    kind,
    points: skins[at].points.length / 3,
    facets: skins[at].facets.length / 3,
  }));
  const text = JSON.stringify({ pieces });
  const head = Buffer.from(text.padEnd(Math.ceil(text.length / 4) * 4));
  const length = Buffer.alloc(4);
  length.writeUInt32LE(head.length);
  const rest = skins.flatMap(({ points, facets: corners }) => [
    Buffer.from(points.buffer),
    Buffer.from(corners.buffer),
  ]);
  return Buffer.concat([length, head, ...rest]);
}

function ball(radius, wanted) {
  const rings = Math.round(Math.sqrt(wanted / 4));
  const round = 2 * rings;
  const points = [];
  const facets = [];
  for (let ring = 0; ring <= rings; ring += 1) {
    const tip = (Math.PI * ring) / rings;
    for (let step = 0; step < round; step += 1) {
      const turn = (2 * Math.PI * step) / round;
      const level = radius * Math.sin(tip);
      points.push(level * Math.cos(turn), level * Math.sin(turn), radius * Math.cos(tip));
    }
  }
  for (let ring = 0; ring < rings; ring += 1) {
    for (let step = 0; step < round; step += 1) {
      const next = (step + 1) % round;
      const [a, b] = [ring * round + step, ring * round + next];
      facets.push(a, a + round, b, b, a + round, b + round);
    }
  }
  return { points: new Float32Array(points), facets: new Uint32Array(facets) };
}
