/**
 * The headless door: an estimate for scripts and checks, as text, JSON or drawings of the lays.
 * Exit code 0, or 2 with a sentence on bad input; then nothing was written.
 */
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import type {
  CallName,
  CallInput,
  CallOutput,
  FlowInput,
  Workshop,
} from '../../shared-core/contract/contract.ts';
import { type Estimate, estimate } from '../../shared-core/flow/estimate.ts';
import { estimateJson } from '../../shared-core/flow/output/estimate-json.ts';
import { estimateText } from '../../shared-core/flow/output/estimate-text.ts';
import type { NapAsked } from '../../shared-core/flow/requirements-table/table-asked.ts';
import { laySvg } from '../../shared-core/lay/lay-svg.ts';
import { type Result, ok, problemSentence, err } from '../../shared-core/measure/problem.ts';
import { type Language, languageNamed, languages } from '../../shared-core/wording/say.ts';
import { slotById } from '../../shared-core/plan/model/coat-plan.ts';
import { speakAtHome } from '../services/calls/speaking.ts';
import { LayGivenUp, openLayThreads } from '../services/threads/lay-threads.ts';
import { openServicesAt, type Services } from '../services/calls/services.ts';
import { isAddress } from '../database/postgres/address.ts';
import { drawingNames } from './drawing-names.ts';
import { writePapers } from './paper-command.ts';
import { seasonOutput } from './season-command.ts';
import { readNap, tableOutput } from './table-command.ts';
import { solveHere } from '../services/threads/solver.ts';

const usage = `Usage:
  npm run -s estimate -- --demo [--json] [--svg DIR] [--pdf DIR] [--seconds S] [--iterations N]
  npm run -s estimate -- --data FILE --coat NAME [--json] [--svg DIR] [--pdf DIR] [--seconds S] [--iterations N]
  either with --table "115 cm; 150 cm" [--nap with|without|both] for what each size takes on those widths
  npm run -s estimate -- --demo --season [--json] (or --data FILE --season) for all plans of the season in their order
  any of them with --language de`;

interface Asked {
  readonly isDemo: boolean;
  readonly dataFile: string | null;
  readonly coat: string | null;
  readonly isJson: boolean;
  readonly svgDir: string | null;
  readonly pdfDir: string | null;
  /** Widths as typed, for the table of requirements in place of the road; null for the road. */
  readonly table: string | null;
  readonly nap: NapAsked;
  readonly isSeason: boolean;
  readonly seconds: number | null;
  readonly iterations: number | null;
  readonly language: Language;
}

/** Time for each lay where none is asked. */
const defaultSeconds = 2;

function readAsked(words: readonly string[]): Result<Asked> {
  const options = {
    demo: { type: 'boolean' },
    data: { type: 'string' },
    coat: { type: 'string' },
    json: { type: 'boolean' },
    svg: { type: 'string' },
    pdf: { type: 'string' },
    table: { type: 'string' },
    nap: { type: 'string' },
    season: { type: 'boolean' },
    seconds: { type: 'string' },
    iterations: { type: 'string' },
    language: { type: 'string' },
  } as const;
  let values: ReturnType<typeof parseArgs<{ options: typeof options }>>['values'];
  try {
    values = parseArgs({ args: [...words], options }).values;
  } catch (error) {
    return err({
      where: 'The command',
      what: `cannot be read (${(error as Error).message})`,
      fix: usage,
    });
  }
  if ((values.demo === true) === (values.data !== undefined)) {
    return err({ where: 'The command', what: 'needs either --demo or --data FILE', fix: usage });
  }
  const language = readLanguage(values.language);
  if (!language.ok) return language;
  const seconds = readNumber('--seconds', values.seconds, 0.05, 3600);
  const iterations = readNumber('--iterations', values.iterations, 1, 1e9);
  if (!seconds.ok) return seconds;
  if (!iterations.ok) return iterations;
  const nap = readNap(values.nap);
  if (!nap.ok) return nap;
  return ok({
    isDemo: values.demo === true,
    dataFile: values.data ?? null,
    coat: values.coat ?? null,
    isJson: values.json === true,
    svgDir: values.svg ?? null,
    pdfDir: values.pdf ?? null,
    table: values.table ?? null,
    nap: nap.value,
    isSeason: values.season === true,
    seconds: seconds.value ?? (iterations.value === null ? defaultSeconds : null),
    iterations: iterations.value,
    language: language.value,
  });
}

function readLanguage(tag: string | undefined): Result<Language> {
  const language = languageNamed(tag ?? 'en');
  if (language !== null) return ok(language);
  return err({
    where: '--language',
    what: `says "${tag}", which is not spoken here`,
    fix: `Give one of ${Object.keys(languages).join(', ')}.`,
  });
}

function readNumber(name: string, text: string | undefined, min: number, max: number): Result<number | null> {
  if (text === undefined) return ok(null);
  const value = Number(text);
  if (text.trim() !== '' && value >= min && value <= max) return ok(value);
  return err({ where: name, what: `is ${text}`, fix: `Give a number from ${min} to ${max}.` });
}

async function ask<Name extends CallName>(
  services: Services,
  workshop: Workshop,
  call: Name,
  input: CallInput<Name>,
): Promise<Result<CallOutput<Name>>> {
  return (await services.answer({ call, workshop, input })) as Result<CallOutput<Name>>;
}

/** The plan to estimate: the one asked for by name, else the only one there is. */
async function flowInput(services: Services, asked: Asked): Promise<Result<FlowInput>> {
  const workshop: Workshop = asked.isDemo ? 'demo' : 'own';
  const plans = await ask(services, workshop, 'listPlans', {});
  if (!plans.ok) return plans;
  const { rows } = plans.value;
  const names = rows.map((row) => row.name).join(', ');
  const chosen =
    asked.coat === null && (rows.length === 1 || asked.isDemo)
      ? rows[0]
      : rows.find((row) => row.name === asked.coat);
  if (!chosen) {
    const fix =
      rows.length === 0 ? 'Plan a coat in the app first.' : `Name one of these with --coat: ${names}.`;
    const what = asked.coat === null ? 'was not named' : `${asked.coat} is not in this workshop`;
    return err({ where: 'The coat', what, fix });
  }
  return ask(services, workshop, 'flowInput', { planId: chosen.id });
}

function writeDrawings(dir: string, sources: FlowInput, result: Estimate): Result<null> {
  try {
    mkdirSync(dir, { recursive: true });
    const names = drawingNames(result.lays.map(({ slotId }) => slotById(sources.plan, slotId).name));
    result.lays.forEach((slotLay, at) => {
      writeFileSync(join(dir, names[at]!), laySvg(sources.plan, slotLay));
    });
    return ok(null);
  } catch (error) {
    return err({
      where: `The folder ${dir}`,
      what: `cannot be written to (${(error as Error).message})`,
      fix: 'Name another folder with --svg.',
    });
  }
}

/** Runs the command. Prints to out; the exit code is what the process ends with. openThreads: where the lays are looked for. */
export async function runEstimate(
  words: readonly string[],
  out: (text: string) => void,
  openThreads: typeof openLayThreads = openLayThreads,
): Promise<Result<null>> {
  const asked = readAsked(words);
  if (!asked.ok) return asked;
  speakAtHome(asked.value.language);
  const { isDemo, dataFile, isJson, svgDir, pdfDir, table, nap, isSeason, seconds, iterations } = asked.value;
  if (dataFile !== null && !isAddress(dataFile) && !existsSync(dataFile)) {
    return err({
      where: `The data file ${dataFile}`,
      what: 'is not there',
      fix: 'Check the path after --data.',
    });
  }
  const scratch = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-'));
  const opened = await openServicesAt({
    dataFile: dataFile ?? join(scratch, 'own.sqlite'),
    demoFile: join(scratch, 'demo.sqlite'),
    // A maker's file is only read, and may be while a window has it open; the demo's is made in the scratch folder.
    isReadOnly: dataFile !== null,
  });
  if (!opened.ok) {
    rmSync(scratch, { recursive: true, force: true });
    return opened;
  }
  const threads = openThreads({ seconds, iterations });
  try {
    if (isDemo) {
      const demo = await ask(opened.value, 'demo', 'openDemo', {});
      if (!demo.ok) return demo;
    }
    if (isSeason) {
      const season = await ask(opened.value, isDemo ? 'demo' : 'own', 'readSeason', {});
      if (!season.ok) return season;
      const told = await seasonOutput(season.value, isJson, threads.runLay);
      if (told.ok) out(told.value);
      return told.ok ? ok(null) : told;
    }
    const sources = await flowInput(opened.value, asked.value);
    if (!sources.ok) return sources;
    if (table !== null) {
      const printed = await tableOutput(sources.value, { widths: table, nap, isJson }, threads.runLay);
      if (!printed.ok) return printed;
      out(printed.value);
      return ok(null);
    }
    const result = await estimate(sources.value, threads.runLay, solveHere);
    if (svgDir !== null) {
      const written = writeDrawings(svgDir, sources.value, result);
      if (!written.ok) return written;
    }
    if (pdfDir !== null) {
      const written = await writePapers(pdfDir, sources.value, result);
      if (!written.ok) return written;
    }
    const { settings, plan } = sources.value;
    const cut = await ask(opened.value, isDemo ? 'demo' : 'own', 'readCutSheet', { planId: plan.id });
    if (!cut.ok) return cut;
    const { sheet } = cut.value;
    out(
      isJson
        ? JSON.stringify(
            estimateJson(sources.value, result, settings, sheet.cuttings.length > 0 ? sheet : null),
            null,
            1,
          )
        : estimateText(sources.value, result, settings),
    );
    return ok(null);
  } catch (error) {
    if (error instanceof LayGivenUp) return err(error.problem);
    throw error;
  } finally {
    await threads.close();
    await opened.value.close();
    rmSync(scratch, { recursive: true, force: true });
  }
}

if (import.meta.main) {
  const done = await runEstimate(process.argv.slice(2), (text) => process.stdout.write(`${text}\n`));
  if (!done.ok) {
    for (const problem of done.problems) process.stderr.write(`${problemSentence(problem)}\n`);
    process.exitCode = 2;
  }
}
