import type { AnyStateNode } from 'xstate';
import { workingStates } from '../../shared/contract/triage-names.ts';
import { triageMachine, type Way, waysOf } from '../../state-machines/index.ts';

type Arrow = { readonly from: string; readonly to: string; readonly by: string };

const outermost = (name: string): string => name.split('.')[0] ?? '';
const innermost = (name: string): string => name.split('.').at(-1) ?? '';
const working = [...new Set(workingStates.map(outermost))];
/** The frame that is drawn around the states that a ticket is worked on in. */
const frame = 'working';

/** Arrows with the same ends become one, with all that leads along it. */
function merged(arrows: readonly Arrow[]): Arrow[] {
  const found = new Map<string, Arrow>();
  for (const arrow of arrows) {
    const key = `${arrow.from} ${arrow.to}`;
    const names = [...(found.get(key)?.by.split(', ') ?? []), arrow.by].filter((name) => name !== '');
    found.set(key, { ...arrow, by: [...new Set(names)].join(', ') });
  }
  return [...found.values()];
}

/** What every state of the frame does alike is drawn once: from the frame, or to it. */
function framed(arrows: readonly Arrow[]): Arrow[] {
  const isThere = (wanted: Arrow) =>
    arrows.some(({ from, to, by }) => from === wanted.from && to === wanted.to && by === wanted.by);
  return arrows.map((arrow) => {
    if (working.includes(arrow.from) && working.every((from) => isThere({ ...arrow, from })))
      return { ...arrow, from: frame };
    return working.includes(arrow.to) && working.every((to) => isThere({ ...arrow, to }))
      ? { ...arrow, to: frame }
      : arrow;
  });
}

/** Between states of the outermost level, whatever state inside them an arrow leaves or leads to. */
const outerArrows = (ways: readonly Way[]): Arrow[] =>
  merged(
    framed(
      ways.flatMap(({ from, by, to }) =>
        to === null || outermost(from) === outermost(to)
          ? []
          : [{ from: outermost(from), to: outermost(to), by: by ?? '' }],
      ),
    ),
  );

/** Between the states inside one; what the outer state takes itself leaves the one that is begun in. */
const innerArrows = (ways: readonly Way[], outer: AnyStateNode): Arrow[] =>
  merged(
    ways.flatMap(({ from, by, to }) => {
      if (to === null || outermost(from) !== outer.key || outermost(to) !== outer.key) return [];
      const begun = outer.initial.target[0]?.key ?? '';
      return [{ from: from === outer.key ? begun : innermost(from), to: innermost(to), by: by ?? '' }];
    }),
  );

/** Names in a diagram are one set: a state inside another one that bears an outer state's name is told apart. */
const outerNames = Object.keys(triageMachine.root.states);
const drawnInside = (name: string, outer: string): string =>
  outerNames.includes(name) ? `${outer}_${name}` : name;

const arrowLine = ({ from, to, by }: Arrow): string => `${from} --> ${to}${by === '' ? '' : `: ${by}`}`;
const indented = (lines: readonly string[]): string[] => lines.map((line) => `  ${line}`);

function stateLines(ways: readonly Way[], state: AnyStateNode): string[] {
  if (Object.keys(state.states).length === 0) return [];
  const named = (name: string): string => drawnInside(name, state.key);
  const inner = [
    ...Object.keys(state.states).flatMap((name) =>
      named(name) === name ? [] : [`state "${name}" as ${named(name)}`],
    ),
    `[*] --> ${named(state.initial.target[0]?.key ?? '')}`,
    ...innerArrows(ways, state).map(({ from, to, by }) =>
      arrowLine({ from: named(from), to: named(to), by }),
    ),
  ];
  return [`state ${state.key} {`, ...indented(inner), '}'];
}

/**
 * The triage machine as a Mermaid state diagram, from its definition. Arrows that leave the state as it is are left
 * out, arrows into and out of states inside another one are drawn to its border.
 */
export function triageDiagram(): string {
  const ways = waysOf(triageMachine);
  const states: AnyStateNode[] = Object.values(triageMachine.root.states);
  const isInFrame = ({ from, to }: Arrow) => working.includes(from) && working.includes(to);
  const arrows = outerArrows(ways);
  const isPassedThrough = ({ always, transitions }: AnyStateNode) =>
    (always ?? []).length > 1 && transitions.size === 0;
  const inside = (wanted: boolean) =>
    states
      .filter(({ key }) => working.includes(key) === wanted)
      .flatMap((state) =>
        isPassedThrough(state) ? [`state ${state.key} <<choice>>`] : stateLines(ways, state),
      );
  return [
    'stateDiagram-v2',
    ...indented([
      `[*] --> ${triageMachine.root.initial.target[0]?.key ?? ''}`,
      `state ${frame} {`,
      ...indented([...inside(true), ...arrows.filter(isInFrame).map(arrowLine)]),
      '}',
      ...inside(false),
      ...arrows.filter((arrow) => !isInFrame(arrow)).map(arrowLine),
    ]),
  ].join('\n');
}

/** The text with the diagram between `<!-- states -->` and `<!-- /states -->`. @throws when a marker is missing */
export function withDiagram(text: string): string {
  const [open, close] = ['<!-- states -->', '<!-- /states -->'];
  const [from, to] = [text.indexOf(open), text.indexOf(close)];
  if (from === -1 || to === -1) throw new Error(`The text has no ${open} … ${close}.`);
  return `${text.slice(0, from + open.length)}\n\`\`\`mermaid\n${triageDiagram()}\n\`\`\`\n${text.slice(to)}`;
}
