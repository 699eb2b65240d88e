import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { SideObservation } from '../../../../shared/contract/triage.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, none, section } from '../../../page/parts.ts';
import { placeWords, signature } from './parts.ts';
import { seenIn } from './watches.ts';

const standing = ({ triage }: CaseFile): SideObservation[] =>
  triage.sides.filter((side) => side.round === triage.round && side.withdrawn === null);

/** Whether the segment says more than the whole chain would. */
export const isNarrowed = (file: CaseFile): boolean => file.segment !== null && standing(file).length > 0;

const conclusionWords = (file: CaseFile, { side, deviceId }: SideObservation): string =>
  `${side === 'input' ? 'upstream' : 'downstream'} of the menu of ${placeWords(file, { kind: 'device', deviceId })}`;

/** The sides that hold, in a sentence. */
export function sideWords(file: CaseFile): string {
  const sides = standing(file);
  return sides.length === 0
    ? 'Not known yet.'
    : `The fault lies ${sides.map((side) => conclusionWords(file, side)).join(' and ')}.`;
}

/** Each side with its proof, and the segment that they leave. */
export function sideSection(file: CaseFile): Html {
  const { sides } = file.triage;
  return section(
    'side',
    'Side, and its proof',
    list(
      sides.map((side) => html`${proof(file, side)} <span class="quiet">${signature(file, side)}</span>`),
    ) ?? none('No side was concluded yet.'),
    isNarrowed(file) && segmentWords(file),
  );
}

function proof(file: CaseFile, side: SideObservation): string {
  const answers = file.triage.watches
    .filter((watch) => side.watchIds.includes(watch.id))
    .flatMap(seenIn)
    .map(({ menu }) => menu);
  const expected = side.side === 'input' ? 'stayed' : 'vanished';
  const agreeing = answers.filter((menu) => menu === expected).length;
  const did = expected === 'stayed' ? 'stayed in the picture' : 'vanished with the picture';
  const limits =
    side.withdrawn !== null
      ? ` Withdrawn: ${side.withdrawn.reason}`
      : side.round === file.triage.round
        ? ''
        : ' Of an earlier round; the chain was changed since.';
  return `The fault lies ${conclusionWords(file, side)}: in ${agreeing} of ${side.occurrences} occurrences the menu ${did}.${limits}`;
}

function segmentWords(file: CaseFile): Html {
  const { segment } = file;
  if (segment === null) return none('The chain was not recorded as found yet.');
  const half = (deviceId: string): string => {
    const input = segment.inputHalfIds.includes(deviceId);
    const output = segment.outputHalfIds.includes(deviceId);
    return input && output ? '' : input ? ', its input side only' : ', its output side only';
  };
  const suspects = [
    ...segment.deviceIds.map(
      (deviceId) => `${placeWords(file, { kind: 'device', deviceId })}${half(deviceId)}`,
    ),
    ...segment.linkIds.map((linkId) => placeWords(file, { kind: 'link', linkId })),
  ];
  return html`<h3>What can still be at fault</h3>${list(suspects) ?? none('Nothing: the answers contradict each other.')}`;
}
