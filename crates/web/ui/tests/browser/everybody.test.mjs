// The page for everybody: by keyboard alone, on a narrow screen, by a reader's ear, on paper.
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { openPage, openShop, pictures } from './shop.mjs';

const axe = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const JOB = '/job/pump-housing';

let shop;
before(async () => {
  shop = await openShop();
});
after(() => shop.close());

for (const width of [1440, 360]) {
  test(`nothing stands in anybody's way at ${width} px`, async () => {
    // The page's own policy keeps a checker out as it keeps out everything else.
    const page = await openPage(shop, '/', width, { bypassCSP: true });
    await page.waitForSelector('.jobs a');
    assert.deepEqual(await found(page), []);
    await page.goto(shop.address + JOB);
    await page.waitForSelector('#block-pour');
    await page.locator('.asks').first().click();
    await page.waitForSelector('.slip .formula');
    await page.locator('.written').nth(1).click();
    await page.locator('.part .written').first().click();
    await page.locator('#drawing').scrollIntoViewIfNeeded();
    await page.waitForSelector('.view.drawn');
    assert.deepEqual(await found(page), []);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    assert.equal(wide, width);
    await page.screenshot({ path: join(pictures, `sheet-${width}.png`), fullPage: true });
    await page.close();
  });
}

test('everything is done by keyboard alone', async () => {
  const page = await openPage(shop);
  await page.waitForSelector('.jobs a');
  await tabTo(page, (one) => one.textContent === 'Pump housing, pair');
  await page.keyboard.press('Enter');
  await page.waitForSelector('#block-pour');
  await tabTo(page, (one) => one.textContent.includes('castings in one mould'));
  await page.keyboard.press('Enter');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('1');
  await page.keyboard.press('Enter');
  await page.waitForSelector('.row.changed');
  // On from where the line stands, to the next why, and out of its slip again.
  await tabTo(page, (one) => one.matches('.asks'));
  await page.keyboard.press('Enter');
  await page.waitForSelector('.slip .formula');
  await tabTo(page, (one) => one.matches('.slip button'));
  await page.keyboard.press('Escape');
  assert.equal(await page.locator('.slip').count(), 0);
  assert.ok(await page.evaluate(() => document.activeElement.matches('.asks')));
  await page.keyboard.press('Control+z');
  await page.waitForSelector('button:text("Redo"):not([disabled])');
  assert.deepEqual(page.faults, []);
  await page.close();
});

test('the cursor is seen wherever it stands', async () => {
  const page = await openPage(shop, JOB);
  await page.waitForSelector('#block-pour');
  for (let step = 0; step < 25; step += 1) {
    await page.keyboard.press('Tab');
    const seen = await page.evaluate(() => {
      const style = getComputedStyle(document.activeElement);
      return style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
    });
    assert.ok(seen, await page.evaluate(() => document.activeElement.outerHTML.slice(0, 200)));
  }
  await page.close();
});

test('printed by the browser it is black on white, without anything to press', async () => {
  const page = await openPage(shop, JOB);
  await page.waitForSelector('#block-pour');
  await page.emulateMedia({ media: 'print' });
  const ink = await page.evaluate(() => getComputedStyle(document.documentElement).color);
  assert.equal(ink, 'rgb(0, 0, 0)');
  assert.equal(await page.locator('.strip').isVisible(), false);
  assert.equal(await page.locator('.asks').first().isVisible(), false);
  await page.close();
});

test('Print leads to the printed sheet', async () => {
  const page = await openPage(shop, JOB);
  const print = page.getByRole('link', { name: 'Print' });
  await print.waitFor();
  const answer = await page.request.get(shop.address + (await print.getAttribute('href')));
  assert.equal(answer.headers()['content-type'], 'application/pdf');
  // Byte for byte what the terminal writes.
  const out = join(shop.folder, 'on-paper');
  execFileSync(process.env.ODDSIDE_BIN, ['plan', join(shop.folder, 'pump-housing'), '--out', out]);
  const written = await readFile(join(out, 'pour-sheet.pdf'));
  assert.ok(written.equals(await answer.body()), 'the page prints the very sheet');
  await page.close();
});

/** What the checker finds against WCAG 2.2 AA and its own good practice. */
async function found(page) {
  await page.evaluate(axe);
  const result = await page.evaluate(() => window.axe.run(document));
  return result.violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html)}`);
}

/** Goes on with Tab until the wanted thing has the cursor. */
async function tabTo(page, wanted) {
  for (let step = 0; step < 200; step += 1) {
    await page.keyboard.press('Tab');
    const there = await page.evaluate(
      (test) => new Function('one', `return (${test})(one)`)(document.activeElement),
      wanted.toString(),
    ).catch(() => false);
    if (there) return;
  }
  assert.fail(`no Tab leads to ${wanted}`);
}
