import { namedPlace } from '../../../shared/chain/named-place.ts';
import type { Chain } from '../../../shared/contract/chain.ts';
import type { SideObservation } from '../../../shared/contract/triage.ts';
import { byComponent } from '../../../shared/isolation/posterior.ts';
import { message } from '../../../shared/message/message.ts';
import { standingSides } from '../record.ts';
import { segmentFor } from '../segment.ts';
import type { Asked } from './asked.ts';
import { offering, type Stage, stage } from './offer.ts';

/**
 * A side that has work done where the fault hardly can be, once nothing is left to test there: taking it back, and going
 * on with what it ruled out. Null where what stands leaves what is likelier, and once in a round for each device.
 */
export function sideInTheWay(asked: Asked): Stage | null {
  const { record, state } = asked;
  const chain = record.asFound?.chain;
  const sides = standingSides(record);
  if (chain === undefined || sides.length === 0) return null;
  const within = chanceWithin(asked, chain, sides);
  const without = sides
    .filter(({ deviceId }) => !wasTakenBack(asked, deviceId))
    .map((side) => {
      const others = sides.filter((each) => each !== side);
      return { side, others, chance: chanceWithin(asked, chain, others) - within };
    });
  const [most] = without.toSorted((a, b) => b.chance - a.chance);
  if (most === undefined || most.chance <= within) return null;
  const { side, others, chance } = most;
  const place = namedPlace(chain, { kind: 'device', deviceId: side.deviceId });
  const takeBack = [
    ...(state === 'locateSide' ? [] : [{ type: 'locateSideAgain' } as const]),
    { type: 'withdrawSide', deviceId: side.deviceId } as const,
    others.length > 0 ? ({ type: 'beginSubstitution' } as const) : ({ type: 'goOnWithoutSide' } as const),
  ];
  return stage(message('sideInTheWay', { place, chance, within }), [
    offering(takeBack, { text: message('takeSideBack', { place }) }),
  ]);
}

const wasTakenBack = ({ record }: Asked, deviceId: string): boolean =>
  record.sides.some(
    (side) => side.round === record.round && side.deviceId === deviceId && side.withdrawn !== null,
  );

/** Chance (0..1) that the fault lies in a device or cable that these sides leave; what is of all parts together counts to none. */
function chanceWithin(
  { standing: { model, chances } }: Asked,
  chain: Chain,
  sides: readonly SideObservation[],
): number {
  const segment = segmentFor(chain, sides);
  const [devices, links] = [new Set(segment.deviceIds), new Set(segment.linkIds)];
  let sum = 0;
  for (const [component, chance] of byComponent(model, chances)) {
    const place = model.components.known.get(component)?.place;
    if (place?.kind === 'device' && devices.has(place.deviceId)) sum += chance;
    if (place?.kind === 'link' && links.has(place.linkId)) sum += chance;
  }
  return sum;
}
