import type { AnyStateMachine, AnyStateNode } from 'xstate';

/** One arrow of a machine. States are named by their path, parts joined by dots; the machine itself is ''. */
export type Way = {
  /** The state that takes the event, in whatever state below it the ticket is. */
  readonly from: string;
  /** Null: taken by itself, as soon as its guard holds. */
  readonly by: string | null;
  /** Null: the state stays what it is. */
  readonly to: string | null;
};

const nameOf = ({ path }: AnyStateNode): string => path.join('.');

/** Every way that a machine's definition has, guarded or not, each once, in the definition's order. */
export function waysOf({ root }: AnyStateMachine): Way[] {
  const found = new Map<string, Way>();
  const walk = (node: AnyStateNode): void => {
    const byItself = (node.always ?? []).map((transition) => ({ by: null, transition }));
    const byEvent = [...node.transitions].flatMap(([by, transitions]) =>
      transitions.map((transition) => ({ by, transition })),
    );
    for (const { by, transition } of [...byItself, ...byEvent])
      for (const target of transition.target ?? [null]) {
        const way: Way = { from: nameOf(node), by, to: target === null ? null : nameOf(target) };
        found.set(JSON.stringify(way), way);
      }
    for (const child of Object.values(node.states)) walk(child);
  };
  walk(root);
  return [...found.values()];
}
