import type { ChangeKind } from '../contract/change.ts';
import type { OwnChange } from '../contract/own-change.ts';
import { changeKinds } from '../contract/triage-names.ts';
import type { ChangeFacts } from './change-facts.ts';
import { changesToChains } from './changes-to-chains.ts';
import { changesToDevices } from './changes-to-devices.ts';
import { changesOfPower } from './changes-to-devices-power.ts';
import { changesOfSettings } from './changes-to-devices-settings.ts';
import { changesToLinks } from './changes-to-links.ts';
import { changesToPlaces } from './changes-to-places.ts';
import { changesToPorts } from './changes-to-ports.ts';

/** The kinds of change there are, with all that is known of them but what they are called. */
export const changeCatalogue: Record<ChangeKind, ChangeFacts> = {
  ...changesToLinks,
  ...changesToPorts,
  ...changesToDevices,
  ...changesOfSettings,
  ...changesOfPower,
  ...changesToChains,
  ...changesToPlaces,
};

/** One fact of every kind, kind by kind. */
export const ofEachChange = <Fact>(of: (facts: ChangeFacts) => Fact): Record<ChangeKind, Fact> =>
  Object.fromEntries(changeKinds.map((kind) => [kind, of(changeCatalogue[kind])])) as Record<
    ChangeKind,
    Fact
  >;

/** For each kind, the others that do on the way what it does. */
export const kindsCountedAs: Record<ChangeKind, readonly ChangeKind[]> = Object.fromEntries(
  changeKinds.map((kind) => [kind, changeKinds.filter((other) => changeCatalogue[other].countsAs === kind)]),
) as Record<ChangeKind, ChangeKind[]>;

/** Whether a change may stay once it cleared the fault; of an organisation's own kind, it says so itself. */
export const staysOnceCured = ({
  test,
  own,
}: {
  test: ChangeKind;
  own?: OwnChange | null | undefined;
}): boolean => (own == null ? !changeCatalogue[test].diagnostic : own.mayStay);
