import { longest, ranges } from '../../../shared/contract/limits.ts';
import type { OwnChange } from '../../../shared/contract/own-change.ts';
import type { Problem } from '../../../shared/contract/problem.ts';
import { clientWays, ownChangeTargets } from '../../../shared/contract/triage-names.ts';
import { faultAt } from '../parts/fault-at.ts';
import { Field, SelectField, TextField } from '../parts/field.tsx';
import { Tick } from '../parts/tick.tsx';
import { NumberField } from './number-field.tsx';
import { ownChangeWords } from './own-changes-words.ts';

type Properties = {
  change: OwnChange;
  /** Its place among the settings, to which the API's faults point. */
  at: number;
  problem: Problem | null;
  onChange: (part: Partial<OwnChange>) => void;
};

/** All that a firm says of a kind of change of its own. */
export function OwnChangeFields({ change, at, problem, onChange }: Properties) {
  const t = ownChangeWords();
  const fault = (field: keyof OwnChange) => faultAt(problem, `/settings/ownChanges/${at}/${field}`);
  return (
    <>
      <Field
        label={t.name}
        hint={t.nameHint}
        required
        maxLength={longest.line}
        error={fault('name') ?? fault('id')}
        value={change.name}
        onInput={({ currentTarget }) => onChange({ name: currentTarget.value })}
      />
      <div class="admin-fields">
        <SelectField
          label={t.actsOn}
          error={fault('actsOn')}
          value={change.actsOn}
          onChoose={(actsOn) => onChange({ actsOn })}
          options={ownChangeTargets.map((value) => ({ value, label: t.targets[value] }))}
        />
        <SelectField
          label={t.byClient}
          error={fault('byClient')}
          value={change.byClient ?? 'notAtAll'}
          onChoose={(way) => onChange({ byClient: way === 'notAtAll' ? null : way })}
          options={(['notAtAll', ...clientWays] as const).map((value) => ({
            value,
            label: t.ways[value],
          }))}
        />
        <NumberField
          label={t.setupMin}
          {...ranges.changeMin}
          error={fault('setupMin')}
          value={change.setupMin}
          onChange={(setupMin) => onChange({ setupMin })}
        />
        <NumberField
          label={t.restoreMin}
          {...ranges.changeMin}
          error={fault('restoreMin')}
          value={change.restoreMin}
          onChange={(restoreMin) => onChange({ restoreMin })}
        />
      </div>
      <TextField
        label={t.caution}
        hint={t.cautionHint}
        optional
        maxLength={longest.note}
        error={fault('caution')}
        value={change.caution}
        onInput={({ currentTarget }) => onChange({ caution: currentTarget.value })}
      />
      <Field
        label={t.kit}
        optional
        maxLength={longest.note}
        error={fault('kit')}
        value={change.kit}
        onInput={({ currentTarget }) => onChange({ kit: currentTarget.value })}
      />
      <Field
        label={t.keepsAway}
        hint={t.keepsAwayHint()}
        optional
        type="number"
        inputMode="decimal"
        {...ranges.keepsAway}
        step="any"
        error={fault('keepsAway')}
        value={change.keepsAway ?? ''}
        onInput={({ currentTarget: { value, valueAsNumber } }) =>
          onChange({ keepsAway: value === '' ? null : valueAsNumber })
        }
      />
      <div class="choices">
        <Tick
          label={t.reachesNeighbours}
          isOn={change.reachesNeighbours}
          onChange={(reachesNeighbours) => onChange({ reachesNeighbours })}
        />
        <Tick label={t.mayStay} isOn={change.mayStay} onChange={(mayStay) => onChange({ mayStay })} />
      </div>
    </>
  );
}
