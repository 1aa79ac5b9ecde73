/** What the server sends and takes, under the names that it has there, as it is described. */
import type { components } from './described';

type Described = components['schemas'];

export type AskGiven = Described['AskGiven'];
export type AskOffered = Described['AskOffered'];
export type TrialBatch = Described['TrialBatch'];
export type BlockAnswer = Described['BlockAnswer'];
export type CardAnswer = Described['CardAnswer'];
export type CardsAnswer = Described['CardsAnswer'];
export type ChargeAnswer = Described['ChargeAnswer'];
export type Change = Described['Change'];
export type ClockAnswer = Described['ClockAnswer'];
export type CellAnswer = Described['CellAnswer'];
export type DiagnosisAnswer = Described['DiagnosisAnswer'];
export type DrawingAnswer = Described['DrawingAnswer'];
export type Kind = Described['LineKind'];
export type ExperimentAnswer = Described['ExperimentAnswer'];
export type ListedExperiment = Described['ListedExperiment'];
export type ListedJob = Described['ListedJob'];
export type MadeJob = Described['MadeJob'];
export type FreezingAnswer = Described['FreezingAnswer'];
export type Handle = Described['Handle'];
export type PlanOnPaper = Described['PlanAnswer'];
export type ResultEntered = Described['ResultEntered'];
export type Run = Described['Run'];
export type FieldHead = Described['FieldHead'];
export type MixAnswer = Described['MixAnswer'];
export type MapHead = Described['MapHead'];
export type MapOffered = Described['MapOffered'];
export type OneChoice = Described['OneChoice'];
export type PieceHead = Described['PieceHead'];
export type PieceKind = Described['PieceKind'];
export type RemarkAnswer = Described['RemarkAnswer'];
export type RowAnswer = Described['RowAnswer'];
export type SentEntry = Described['SentEntry'];
export type SheetAnswer = Described['SheetAnswer'];
export type SolidsHead = Described['Head'];
export type StepAnswer = Described['StepAnswer'];
export type TableAnswer = Described['TableAnswer'];
export type TakenEntry = Described['TakenEntry'];
export type TestAnswer = Described['TestAnswer'];
export type ToldBlock = Described['ToldBlock'];
export type ToldAnswer = Described['ToldAnswer'];
export type TypedLine = Described['TypedLine'];
export type UnitChoice = Described['UnitChoice'];
export type Unsettled = Described['Unsettled'];
export type WeighedPart = Described['WeighedPart'];
export type WhyAnswer = Described['WhyAnswer'];
export type Words = Described['Words'];

export type ClassOffered = Described['ClassOffered'];
export type LeadAnswer = Described['LeadAnswer'];
export type LessonAnswer = Described['LessonAnswer'];
export type PhoneAnswer = Described['PhoneAnswer'];
export type TermAnswer = Described['TermAnswer'];

export type BookAnswer = Described['BookAnswer'];
export type Changes = Described['Changes'];
export type DescribedJob = Described['DescribedJob'];
export type ShapeOffered = Described['ShapeOffered'];
export type DefectSeen = Described['DefectSeen'];
export type LogAnswer = Described['LogAnswer'];
export type PourPlanned = Described['PourPlanned'];
export type Poured = Described['Poured'];
export type SayOffered = Described['SayOffered'];
export type Seen = Described['Seen'];

/** What stands behind a key of a job's file; nothing where it is left to the program. */
export type Typed = Described['TypedValue'] | null;

/** A no; what the page says no to by itself has nothing but words. */
export type No = Pick<Described['No'], 'message'> & Partial<Described['No']>;
