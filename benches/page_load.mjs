// The page's server under load: 50 who read sheets and 5 who change them, for a minute, on loopback.
//
//     node benches/page_load.mjs target/debug/oddside [SECONDS]
//
// Serves a copy of the examples. Tells errors and times; ends with 1 where anything went wrong.
import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

const [binary, seconds = '60'] = process.argv.slice(2);
const shop = mkdtempSync(join(tmpdir(), 'page-load-'));
cpSync(resolve(import.meta.dirname, '../examples'), shop, { recursive: true });
const server = spawn(resolve(binary), ['serve', shop, '--port', '0']);
const address = await new Promise((done) =>
  server.stdout.on('data', (said) => done(/http:\S+?(?=\/?\s)/.exec(String(said))[0])),
);

// Five jobs are changed, one by each who changes; all of them are read.
const jobs = ['pump-housing', 'flanged-ring', 'vise-jaws', 'pipe-bend', 'cooking-pot'];
const KEY = 'melt.pig';
const [READ, CHANGED] = ['read', 'changed'];
const times = { [READ]: [], [CHANGED]: [] };
const wrong = [];
const until = Date.now() + Number(seconds) * 1000;

async function asked(kind, way, request) {
  const begun = performance.now();
  const answer = await fetch(address + way, request);
  const body = await answer.json();
  times[kind].push(performance.now() - begun);
  if (!answer.ok) wrong.push(`${way}: ${answer.status} ${JSON.stringify(body)}`);
}

async function reads(who) {
  for (let turn = who; Date.now() < until; turn += 1) {
    await asked(READ, `/api/v1/jobs/${jobs[turn % jobs.length]}/sheet`);
    await pause(100);
  }
}

async function changes(job) {
  const sheet = await (await fetch(`${address}/api/v1/jobs/${job}/sheet`)).json();
  const lines = sheet.blocks.flatMap((block) => block.typed);
  let was = lines.find((line) => line.key === KEY).value;
  for (let turn = 0; Date.now() < until; turn += 1) {
    const to = `${1 + (turn % 40)}.5 % of poured`;
    await asked(CHANGED, `/api/v1/jobs/${job}/typed`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', origin: address },
      body: JSON.stringify({ key: KEY, was, to }),
    });
    was = to;
    await pause(500);
  }
}

const pause = (ms) => new Promise((done) => setTimeout(done, ms));

function told(kind) {
  const sorted = times[kind].toSorted((one, other) => one - other);
  const at = (share) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))];
  return `${kind}: ${sorted.length}, median ${at(0.5).toFixed(0)} ms, p99 ${at(0.99).toFixed(0)} ms`;
}

try {
  await Promise.all([
    ...Array.from({ length: 50 }, (_, who) => reads(who)),
    ...jobs.map((job) => changes(job)),
  ]);
} finally {
  server.kill();
  rmSync(shop, { recursive: true });
}
console.log(told(READ));
console.log(told(CHANGED));
console.log(`errors: ${wrong.length}`, wrong.slice(0, 3));
process.exitCode = wrong.length > 0 ? 1 : 0;
