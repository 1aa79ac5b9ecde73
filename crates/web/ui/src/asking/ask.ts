/** Questions to the server, and the three ways in which one comes to nothing. */
import type {
  AskGiven,
  AskOffered,
  BookAnswer,
  ChargeAnswer,
  Change,
  Changes,
  DefectSeen,
  DescribedJob,
  DiagnosisAnswer,
  DrawingAnswer,
  ExperimentAnswer,
  FreezingAnswer,
  ListedExperiment,
  ListedJob,
  LessonAnswer,
  LogAnswer,
  MadeJob,
  No,
  PhoneAnswer,
  PourPlanned,
  Poured,
  ResultEntered,
  Run,
  SayOffered,
  Seen,
  ShapeOffered,
  SheetAnswer,
  TermAnswer,
  ToldAnswer,
  WhyAnswer,
  Words,
} from '../answers';
import { word } from './words.svelte';

/** The server said no. */
export class Refused extends Error {
  constructor(
    readonly status: number,
    readonly no: No,
  ) {
    super(no.message);
  }
}

/** The server does not answer at all. */
export class Gone extends Error {}

const ROOT = '/api/v1';

export const words = () => json<Words>('/words');
export const jobs = () => json<ListedJob[]>('/jobs');
export const sheet = (job: string) => json<SheetAnswer>(`${of(job)}/sheet`);
export const drawing = (job: string) => json<DrawingAnswer>(`${of(job)}/drawing`);
export const why = (job: string, figure: string) =>
  json<WhyAnswer>(`${of(job)}/why/${encodeURIComponent(figure)}`);

export const charge = (job: string) => json<ChargeAnswer>(`${of(job)}/charge`);
export const asks = () => json<AskOffered[]>('/bench');
export const shop = () => json<SheetAnswer>('/shop');

/** Asks the bench. */
export const askBench = (ask: string, given: AskGiven) =>
  json<ToldAnswer>(`/bench/${ask}`, sent('POST', given));

/** Sends one change of the shop's file; the answer is its sheet. */
export const changeShop = (one: Change) => json<SheetAnswer>('/shop/typed', sent('PUT', one));

/** Sends one change; the answer is the sheet that follows from it. */
export const change = (job: string, one: Change) =>
  json<SheetAnswer>(`${of(job)}/typed`, sent('PUT', one));

/** Sends a mesh; a job is made from it. */
export function newJob(mesh: File, name: string, alloy: string): Promise<MadeJob> {
  const wanted = new URLSearchParams({ name, file: mesh.name, alloy });
  return json<MadeJob>(`/jobs?${wanted}`, {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream' },
    body: mesh,
  });
}

/** The ways to describe a part, and a job from one that is. */
export const shapes = () => json<ShapeOffered[]>('/shapes');
export const describeJob = (job: DescribedJob) =>
  json<MadeJob>('/jobs/described', sent('POST', job));

/** The solids of the mould as they are sent. */
export async function solids(job: string): Promise<ArrayBuffer> {
  return (await asked(`${of(job)}/solids`)).arrayBuffer();
}

/** Where a phone finds the bench card of a job. */
export const phoneOf = (job: string) => json<PhoneAnswer>(`${of(job)}/phone`);

export const freezing = (job: string) => json<FreezingAnswer>(`${of(job)}/freezing`);

/** Begins to follow the freezing of a job. */
export const followFreezing = (job: string) =>
  json<Run>(`${of(job)}/freezing`, sent('POST', {}));

/** Begins to look for the smallest feeder of a job that feeds. */
export const searchFeeder = (job: string) => json<Run>(`${of(job)}/feeder`, { method: 'POST' });

/** Stops longer work. */
export async function stopRun(id: number): Promise<void> {
  await asked(`/runs/${id}`, { method: 'DELETE' });
}

/** All longer work, told whenever it changes. */
export const runEvents = () => new EventSource(`${ROOT}/runs/events`);

/** A map of the drawing as it is sent. */
export async function map(job: string, name: string): Promise<ArrayBuffer> {
  return (await asked(`${of(job)}/maps/${encodeURIComponent(name)}`)).arrayBuffer();
}

/** Where the printed sheet lies, for each size of paper. */
export function paper(job: string, size: 'A4' | 'Letter'): string {
  return `${ROOT}${of(job)}/sheet.pdf?letter=${size === 'Letter'}`;
}

export const experiments = () => json<ListedExperiment[]>('/experiments');
export const experiment = (way: string) => json<ExperimentAnswer>(ofTrial(way));

/** Plans the batches of an experiment, or so many more than there are. */
export const addBatches = (way: string, more?: number) =>
  json<ExperimentAnswer>(`${ofTrial(way)}/batches`, sent('POST', { more: more ?? null }));

/** Takes a result in; one in doubt is refused with the ways in which it may be meant. */
export const enterResult = (way: string, result: ResultEntered) =>
  json<ExperimentAnswer>(`${ofTrial(way)}/results`, sent('POST', result));

/** Where the cards of an experiment's batches lie, for each size of paper. */
export function cards(way: string, size: 'A4' | 'Letter'): string {
  return `${ROOT}${ofTrial(way)}/cards.pdf?letter=${size === 'Letter'}`;
}

export const theLog = () => json<LogAnswer>('/log');
export const logSheet = () => json<SheetAnswer>('/log/sheet');
export const changeLog = (one: Change) => json<SheetAnswer>('/log/typed', sent('PUT', one));

/** What the plan of a job has for an entry of its pour. */
export const pourPlanned = (job: string) => json<PourPlanned>(`${of(job)}/pour`);
export const addPour = (poured: Poured) =>
  json<SheetAnswer>('/log/pours', sent('POST', poured));
export const addDefect = (seen: DefectSeen) =>
  json<SheetAnswer>('/log/defects', sent('POST', seen));

/** The words of the trade that are sought; all where nothing is. */
export const glossary = (sought: string) =>
  json<TermAnswer[]>(`/glossary?${new URLSearchParams({ word: sought })}`);
export const glossaryOfJob = (job: string) => json<TermAnswer[]>(`${of(job)}/glossary`);

export const lesson = (job: string) => json<LessonAnswer>(`${of(job)}/lesson`);

/** The plan of a job for a class. */
export const classPlan = (job: string, given: string) =>
  json<ToldAnswer>(`${of(job)}/class?${given}`);

/** Where the papers of a lesson lie, for each size of paper. */
export function lessonPaper(job: string, answers: boolean, size: 'A4' | 'Letter'): string {
  return `${ROOT}${of(job)}/lesson.pdf?answers=${answers}&letter=${size === 'Letter'}`;
}
export function classPaper(job: string, given: string, size: 'A4' | 'Letter'): string {
  return `${ROOT}${of(job)}/class.pdf?${given}&letter=${size === 'Letter'}`;
}

/** Puts what the log teaches into the shop's file. */
export const acceptLesson = (name: string) =>
  json<LogAnswer>('/log/learned', sent('POST', { name }));

/** What may be said of a defect, and what it may come from. */
export const says = () => json<SayOffered[]>('/diagnosis');
export const diagnose = (seen: Seen) => json<DiagnosisAnswer>('/diagnosis', sent('POST', seen));

/** The sand as it was tested, and the book of the heap. */
export const sand = () => json<BookAnswer[]>('/sand');
export const changeBook = (book: string, changes: Changes) =>
  json<BookAnswer>(`/sand/${book}`, sent('PUT', changes));

/** What is said of an error: the server's no, or that there is none. */
export function noOf(error: unknown): No {
  return error instanceof Refused ? error.no : { message: word('page-server-gone') };
}

const ofTrial = (way: string) => `/experiments/${encodeURIComponent(way)}`;
const of = (job: string) => `/jobs/${encodeURIComponent(job)}`;

const sent = (method: string, body: unknown): RequestInit => ({
  method,
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify(body),
});

async function json<T>(way: string, how?: RequestInit): Promise<T> {
  return (await asked(way, how)).json() as Promise<T>;
}

async function asked(way: string, how?: RequestInit): Promise<Response> {
  let answer: Response;
  try {
    answer = await fetch(ROOT + way, how);
  } catch (error) {
    throw new Gone(String(error));
  }
  if (answer.ok) return answer;
  throw new Refused(answer.status, await no(answer));
}

/** What a no says; a guard or a broken way says it in plain text. */
async function no(answer: Response): Promise<No> {
  const text = await answer.text();
  try {
    const said = JSON.parse(text) as No;
    if (typeof said.message === 'string') return said;
  } catch {
    // No JSON: the text itself is what was said.
  }
  return { message: text.trim() || `${answer.status} ${answer.statusText}` };
}
