import type { ComponentChildren } from 'preact';
import type { Conversion, LookMoment, LookSent, SignalSeen } from '../../../../shared/contract/look.ts';
import { standingEvidence, standingLooks } from '../../../../state-machines/triage/record.ts';
import { fieldsFor } from '../../../../state-machines/triage/signal-compare.ts';
import { Button } from '../../parts/button.tsx';
import { SelectField } from '../../parts/field.tsx';
import { useDraftForm } from '../../store/use-draft.ts';
import { CaptureButton } from '../common/capture.tsx';
import { lookWords } from './look-words.ts';
import { Intended, nothingTold, SignalFields } from './signal-form.tsx';
import type { Work } from './work.ts';

type Signal = Extract<LookSent, { kind: 'signal' }>;
type What = { deviceId: string; moment: LookMoment };
type Draft = {
  moment: LookMoment;
  receives: SignalSeen | null;
  sends: SignalSeen | null;
  intended: Conversion[];
};

/** A photo of the page belongs to a reading that is kept within these minutes; assumed. */
const photoIsOfItMin = 10;

/** The page of a device, to be read: its fields, and the buttons that keep what it says. */
export function useReading(
  work: Work,
  what: What,
): { fields: ComponentChildren; buttons: ComponentChildren } {
  const t = lookWords();
  const { triage } = work.ticket;
  const { deviceId } = what;
  const [{ moment, receives, sends, intended }, write, forget] = useDraftForm<Draft>(
    `reading ${work.ticket.id} ${deviceId}`,
    { moment: what.moment, receives: nothingTold, sends: nothingTold, intended: [] },
  );
  const wasRead = standingLooks(triage, 'signal').some((look) => look.what.deviceId === deviceId);
  const fields = fieldsFor(triage.symptom);
  const keep = async (said: Signal['said']) => {
    const since = new Date(Date.now() - photoIsOfItMin * 60_000).toISOString();
    const photo = standingEvidence(triage).findLast(
      ({ id, kind, tie, at }) =>
        kind === 'photo' &&
        tie.deviceId === deviceId &&
        tie.shows === 'screen' &&
        at >= since &&
        !work.isOnItsWay(id),
    );
    const look: Signal = { kind: 'signal', deviceId, moment, said };
    if (await work.send({ type: 'recordLook', what: look, evidenceId: photo?.id ?? null })) await forget();
  };
  return {
    fields: (
      <>
        <CaptureButton ticket={work.ticket} tie={{ deviceId, shows: 'screen' }} label={t.photoOfPage}>
          {t.photoOfPage}
        </CaptureButton>
        <SelectField
          label={t.moment}
          options={[
            { value: 'bad', label: t.bad },
            { value: 'good', label: t.good },
          ]}
          value={moment}
          onChoose={(chosen) => write({ moment: chosen })}
        />
        <SignalFields
          title={t.receives}
          fields={fields}
          seen={receives}
          onChange={(seen) => write({ receives: seen })}
        />
        <SignalFields
          title={t.sends}
          fields={fields}
          seen={sends}
          onChange={(seen) => write({ sends: seen })}
        />
        <Intended chosen={intended} onChange={(chosen) => write({ intended: chosen })} />
      </>
    ),
    buttons: (
      <>
        <Button kind="primary" large onClick={() => void keep({ kind: 'read', receives, sends, intended })}>
          {t.keep}
        </Button>
        {wasRead && (
          <Button large onClick={() => void keep({ kind: 'asBefore' })}>
            {t.asBefore}
          </Button>
        )}
      </>
    ),
  };
}
