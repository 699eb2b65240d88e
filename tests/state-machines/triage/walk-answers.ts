import { sourcesOf } from '../../../shared/chain/graph.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { Symptom } from '../../../shared/contract/triage.ts';
import {
  checkAnswers,
  contentKinds,
  ownChangeTargets,
  patternTriggers,
  symptomKinds,
  verdicts,
  whatChangedKinds,
} from '../../../shared/contract/triage-names.ts';
import type { Circumstances } from '../../../shared/isolation/index.ts';
import { anyFault, type Fault, oneOf } from '../../support/house/faults.ts';
import { House } from '../../support/house/house.ts';
import { seenIn, type ToLookAt } from '../../support/house/looks.ts';
import { toldOf } from '../../support/house/told.ts';
import type { Sent as Command } from '../../support/technician.ts';
import { untoldPattern } from '../../support/untold-pattern.ts';
import { uuid } from './triage-events.ts';

type Random = () => number;

/** Kinds of change that an organisation has added: one to each kind of place, with and without a figure. */
export const ownChanges: readonly OwnChange[] = ownChangeTargets.map((actsOn, at) => ({
  id: uuid(0x900 + at),
  name: `House rule ${at + 1}`,
  actsOn,
  reachesNeighbours: at % 2 === 0,
  setupMin: 3,
  restoreMin: 2,
  kit: '',
  caution: '',
  byClient: null,
  mayStay: at % 2 === 1,
  keepsAway: at === 0 ? null : 0.6,
}));

/** What the call brings: of sources and content mostly nothing that narrows it. */
export function intakeOf(chain: Chain, faults: readonly Fault[], random: Random) {
  const symptom = symptomOf(chain, faults, random);
  const sources = sourcesOf(chain).map(({ id }) => id);
  return {
    symptom,
    affectedSources: random() < 0.3 ? [oneOf(sources, random)] : [],
    affectedDisplays: [],
    content: oneOf(['notKnown', ...contentKinds] as const, random),
    workedBefore: oneOf([true, false, null], random),
  };
}

/** What the client tells of how it comes: mostly what is so, at times something else, or nothing. */
function symptomOf(chain: Chain, [fault]: readonly Fault[], random: Random): Symptom {
  const kind = oneOf(symptomKinds, random);
  const told = random();
  if (fault === undefined || told < 0.2) return { kind, lastsS: null, perHour: null, ...untoldPattern };
  return {
    kind,
    lastsS: null,
    ...inOtherWords(toldOf(told < 0.4 ? anyFault(chain, random) : fault), random),
  };
}

type Told = Pick<Symptom, 'perHour' | 'pattern' | 'onlyWith'>;

/** What a house knows nothing of, and clients say: an application, and something else that brings it on. */
function inOtherWords({ perHour, pattern, onlyWith }: Told, random: Random): Told {
  const isOther = pattern.kind === 'trigger' && random() < 1 / patternTriggers.length;
  const isApplication = onlyWith?.kind === 'title' && random() < 0.5;
  return {
    perHour,
    pattern: isOther ? { kind: 'trigger', trigger: 'other' } : pattern,
    onlyWith: isApplication ? { ...onlyWith, kind: 'application' } : onlyWith,
  };
}

const kinds = ['coupler', 'syncSwitch', 'display', 'source', 'extenderPair', 'powerSupply'] as const;
const cables = [
  { kind: 'cable', category: 'ultraHighSpeed', lengthM: 3 },
  { kind: 'cable', category: 'premiumHighSpeed', lengthM: 15 },
] as const;

/** Everything, nothing, or some of what there is to have at hand. */
export function anyKit(random: Random): Circumstances['kit'] {
  const how = random();
  if (how < 0.5) return null;
  return how < 0.65 ? [] : [...kinds.map((kind) => ({ kind })), ...cables].filter(() => random() < 0.5);
}

/** What is answered otherwise than it is. */
export type Errs = {
  chain: Chain;
  random: Random;
  /** Chances: a look that shows another house; a verdict given by hand. */
  misreads: number;
  byHand: number;
};

/** A command as somebody sends it who now and then sees wrongly, judges by eye, and has something to say. */
export function asAnswered(command: Command, errs: Errs): Command {
  const { random, misreads, byHand } = errs;
  switch (command.type) {
    case 'judgeRetest':
      return random() < byHand
        ? { ...command, override: { verdict: oneOf(verdicts, random), reason: 'By eye' } }
        : command;
    case 'recordLook':
      return random() < (isWitness(command) ? saysNothing : misreads) ? misread(command, errs) : command;
    case 'answerWhatChanged':
      return { ...command, answers: [{ kind: oneOf(whatChangedKinds, random), text: '', when: null }] };
    case 'checkBeforeLeaving':
      return {
        ...command,
        pictures: (command.pictures as object[]).map((pair) => ({
          ...pair,
          answer: oneOf(checkAnswers, random),
        })),
      };
    case 'endUnattended':
      return random() < byHand ? { ...command, firmware: updated(command.firmware as object[]) } : command;
    default:
      return command;
  }
}

/** The chance that whoever is asked what another display or source shows can't say. */
const saysNothing = 0.3;
const isWitness = ({ what }: Command): boolean => (what as ToLookAt).kind === 'witness';

/** Firmware that was updated meanwhile. */
const updated = (firmware: readonly object[]) => firmware.map((each) => ({ ...each, level: 'Another' }));

/** What the same look would show in a house where something else is wrong. */
function misread(command: Command, { chain, random }: Errs): Command {
  const what = command.what as ToLookAt;
  if (what.kind === 'witness') return { ...command, what: { ...what, answer: 'cannotSay' } };
  const other = new House({ chain, faults: [anyFault(chain, random)], seed: 1 + Math.floor(random() * 1e6) });
  return { ...command, what: seenIn(other, what, oneOf(symptomKinds, random)) };
}
