import type { ChangeKind } from '../contract/change.ts';
import { changeKinds } from '../contract/triage-names.ts';
import type { ChangeFacts } from './change-facts.ts';
import { changesToDevices } from './changes-to-devices.ts';
import { changesToLinks } from './changes-to-links.ts';
import { changesToPorts } from './changes-to-ports.ts';

/** The kinds of change there are, with all that is known of them but what they are called. */
export const changeCatalogue: Record<ChangeKind, ChangeFacts> = {
  ...changesToLinks,
  ...changesToPorts,
  ...changesToDevices,
};

/** One fact of every kind, kind by kind. */
export const ofEachChange = <Fact>(of: (facts: ChangeFacts) => Fact): Record<ChangeKind, Fact> =>
  Object.fromEntries(changeKinds.map((kind) => [kind, of(changeCatalogue[kind])])) as Record<
    ChangeKind,
    Fact
  >;
