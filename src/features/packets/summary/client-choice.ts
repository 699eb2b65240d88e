import { namedPlace } from '../../../../shared/chain/named-place.ts';
import type { CaseFile } from '../../../../shared/contract/packet.ts';
import type { ClientChoice, LeavingCheck, WayOn } from '../../../../shared/contract/triage.ts';
import { message } from '../../../../shared/message/index.ts';
import { type Html, html } from '../../../page/html.ts';
import { list, section, table } from '../../../page/parts.ts';
import { chainOf, placeWords, signature } from './parts.ts';
import { inWords, spoken, termOf, wordsOf } from './tongue.ts';
import { joined } from './words.ts';

/** What the client chose between, what came of it, and what was tried before leaving; nothing where nothing was. */
export function choiceSection(file: CaseFile): Html | null {
  const t = wordsOf(file).choices;
  const { choices, leavingCheck, followUp } = file.triage;
  if (choices.length === 0 && leavingCheck === null && followUp === null) return null;
  return section(
    'choices',
    t.title,
    html`${choices.map((choice) => oneChoice(file, choice))}`,
    leavingCheck !== null && leavingWords(file, leavingCheck),
    followUp !== null && html`<h3>${t.followUp}</h3>`,
    followUp !== null &&
      list(
        followUp.answers.map(
          (answer) =>
            html`${joined([termOf(file, 'followUpOutcome', answer.heard), answer.note], ': ')} <span class="quiet">${signature(file, answer)}</span>`,
        ),
      ),
  );
}

function oneChoice(file: CaseFile, choice: ClientChoice): Html {
  const t = wordsOf(file).choices;
  const chose = t.chose(choice.chosenBy, termOf(file, 'choiceWay', choice.way));
  const outcome =
    choice.outcome === null ? '' : t.cameOf(termOf(file, 'followUpOutcome', choice.outcome.kind));
  return html`<p>${chose} ${outcome} <span class="quiet">${signature(file, choice)}</span></p>
    ${table(
      t.heads,
      choice.offered.map((way) => wayRow(file, way)),
    )}`;
}

function wayRow(file: CaseFile, { way, change, minutes, days, sureness }: WayOn): string[] {
  const what =
    change === null
      ? ''
      : inWords(
          file,
          message('changeAt', { change: change.kind, place: namedPlace(chainOf(file), change.target) }),
        );
  return [
    joined([termOf(file, 'choiceWay', way), what], ': '),
    spoken(file, (say) => say.minutesNeeded(minutes)),
    spoken(file, (say) => say.number(Math.round(days))),
    spoken(file, (say) => say.percent(sureness)),
  ];
}

/** What works, what fails and what nobody tried; what works is only counted. */
function leavingWords(file: CaseFile, check: LeavingCheck): Html {
  const t = wordsOf(file).choices;
  const { pictures, sound, usualStart, note } = check;
  const named = (id: string) => placeWords(file, { kind: 'device', deviceId: id });
  const open = pictures.flatMap(({ sourceId, displayId, answer }) =>
    answer === 'works'
      ? []
      : [`${t.onDisplay(named(sourceId), named(displayId))}: ${termOf(file, 'checkAnswer', answer)}`],
  );
  const work = pictures.length - open.length;
  return html`<h3>${t.leaving}</h3>${list([
    t.picturesWork(work, pictures.length),
    ...open,
    `${t.sound}: ${termOf(file, 'checkAnswer', sound)}`,
    `${t.usualStart}: ${termOf(file, 'checkAnswer', usualStart)}`,
    ...(note === '' ? [] : [note]),
  ])}<p class="quiet">${signature(file, check)}</p>`;
}
