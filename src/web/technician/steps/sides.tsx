import { useState } from 'preact/hooks';
import type { SideObservation } from '../../../../shared/contract/triage.ts';
import { standingSides } from '../../../../state-machines/triage/record.ts';
import { Button } from '../../parts/button.tsx';
import { placeWords } from '../common/place-words.ts';
import { ReasonDialog } from './reason.tsx';
import { stepWords } from './step-words.ts';
import type { Work } from './work.ts';

export const deviceWords = ({ chain }: Work, deviceId: string): string =>
  placeWords(chain, { kind: 'device', deviceId });

/** The sides that stand, each with the way to take it back. */
export function Sides({ work }: { work: Work }) {
  const t = stepWords();
  const [taking, setTaking] = useState<SideObservation | null>(null);
  const sides = standingSides(work.ticket.triage);
  if (sides.length === 0) return null;
  return (
    <section>
      <h2>{t.sides}</h2>
      <ul class="list">
        {sides.map((side) => (
          <li key={side.deviceId} class="row">
            <span>{t.sideOf[side.side](deviceWords(work, side.deviceId))}</span>
            {work.may('withdrawSide') && (
              <Button kind="quiet" onClick={() => setTaking(side)}>
                {t.takeBack}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {taking !== null && (
        <ReasonDialog
          about={`side ${work.ticket.id} ${taking.deviceId}`}
          title={t.takeBackTitle}
          suggestion={t.takeBackReason}
          action={t.takeBack}
          refusal={work.refusal}
          onDone={() => setTaking(null)}
          onReason={(reason) => work.send({ type: 'withdrawSide', deviceId: taking.deviceId, reason })}
        />
      )}
    </section>
  );
}
