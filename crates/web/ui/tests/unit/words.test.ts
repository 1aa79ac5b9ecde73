import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { withRoom } from '../../src/drawing/room';
import { sizeText } from '../../src/sheet/size';

const ui = join(import.meta.dirname, '../..');

/** Ids of the page's words in a text. */
const idsIn = (text: string, quote: RegExp) => [...text.matchAll(quote)].map(([, id]) => id ?? '');

test('the server sends every word that the page uses, and no other', () => {
  const files = readdirSync(join(ui, 'src'), { recursive: true, encoding: 'utf8' });
  const sources = files.filter((name) => /\.(ts|svelte)$/.test(name));
  const used = sources.flatMap((name) =>
    idsIn(readFileSync(join(ui, 'src', name), 'utf8'), /['"](page-[a-z-]+)['"]/g),
  );
  const sent = readFileSync(join(ui, '../src/answers/words.rs'), 'utf8');
  expect([...new Set(used)].sort()).toEqual(idsIn(sent, /"(page-[a-z-]+)"/g).sort());
});

test('a drawing gets room at its sides, and the size of its place', () => {
  const svg = '<svg xmlns="x" width="100mm" height="40mm" viewBox="0 0 100 40"><path/></svg>';
  expect(withRoom(svg)).toBe('<svg xmlns="x" viewBox="-5.000 0.000 110.000 40.000"><path/></svg>');
  expect(withRoom('<svg><path/></svg>')).toBe('<svg><path/></svg>');
});

test('sizes are written in the numbers of the language', () => {
  expect(sizeText([2794, 12.34, 3.14159], 'en-GB')).toBe('2,794 × 12 × 3.1 mm');
  expect(sizeText([0.62, 0.5, 0.0421], 'fr')).toBe('0,62 × 0,5 × 0,042 mm');
});
