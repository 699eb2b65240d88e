import type { Device, PassedOn } from '../../../../shared/contract/chain.ts';
import { hdrKinds, pictureFeatures } from '../../../../shared/contract/chain-names.ts';
import { dynamicRangeNames } from '../../../../shared/message/figures.ts';
import { SelectField } from '../../parts/field.tsx';
import { Tick, Ticks } from '../../parts/tick.tsx';
import { placeWords } from './words.ts';

const depths = [8, 10, 12, 16] as const;
const states = ['unknown', 'yes', 'no'] as const;
const stateOf = (is: boolean | undefined): (typeof states)[number] =>
  is === undefined ? 'unknown' : is ? 'yes' : 'no';

/** What a device passes of what comes with a picture; what nobody looked up stays out of the record. */
export function PassesFields({
  device,
  onChange,
}: {
  device: Device;
  onChange: (part: Pick<Device, 'passes'>) => void;
}) {
  const t = placeWords();
  const passes = device.passes ?? {};
  const change = (part: { [Name in keyof PassedOn]: PassedOn[Name] }): void => {
    const known = Object.entries({ ...passes, ...part }).filter(([, value]) => value !== undefined);
    onChange({ passes: known.length === 0 ? undefined : Object.fromEntries(known) });
  };
  const { dynamicRanges, features, deepestBits } = passes;
  const able = (label: string, field: 'wideColour' | 'threeD' | 'toneMaps') => (
    <SelectField
      label={label}
      options={states.map((value) => ({ value, label: t.known[value] }))}
      value={stateOf(passes[field])}
      onChoose={(state) => change({ [field]: state === 'unknown' ? undefined : state === 'yes' })}
    />
  );
  return (
    <details class="more" open={device.passes !== undefined}>
      <summary>{t.passes}</summary>
      <div class="stack">
        <div class="row">
          <Tick
            label={t.hdrLookedUp}
            isOn={dynamicRanges !== undefined}
            onChange={(isOn) => change({ dynamicRanges: isOn ? [] : undefined })}
          />
          <Tick
            label={t.featuresLookedUp}
            isOn={features !== undefined}
            onChange={(isOn) => change({ features: isOn ? [] : undefined })}
          />
        </div>
        {dynamicRanges !== undefined && (
          <Ticks
            inRow
            label={t.hdrKinds}
            hint={t.noneTicked}
            options={hdrKinds.map((value) => ({ value, label: dynamicRangeNames[value] }))}
            values={dynamicRanges}
            onChange={(kinds) => change({ dynamicRanges: kinds })}
          />
        )}
        {features !== undefined && (
          <Ticks
            inRow
            label={t.pictureFeatures}
            hint={t.noneTicked}
            options={pictureFeatures.map((value) => ({ value, label: t.featureNames[value] }))}
            values={features}
            onChange={(some) => change({ features: some })}
          />
        )}
        <div class="three">
          <SelectField
            label={t.deepestBits}
            options={[
              { value: '', label: t.known.unknown },
              ...depths.map((bits) => ({ value: String(bits), label: String(bits) })),
            ]}
            value={String(deepestBits ?? '')}
            onChoose={(bits) => change({ deepestBits: depths.find((one) => String(one) === bits) })}
          />
          {able(t.wideColour, 'wideColour')}
          {able(t.threeD, 'threeD')}
          {able(t.toneMaps, 'toneMaps')}
        </div>
      </div>
    </details>
  );
}
