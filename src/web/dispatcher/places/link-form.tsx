import type { Chain, Link, Port } from '../../../../shared/contract/chain.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { Button } from '../../parts/button.tsx';
import { faultAt, faultsWithin } from '../../parts/fault-at.ts';
import { Field, SelectField } from '../../parts/field.tsx';
import { Tick } from '../../parts/tick.tsx';
import { refKey } from '../../place/chain-edits.ts';
import { categoryChoices, terms } from '../../words/terms.ts';
import { number } from '../../words/times.ts';
import { Faults } from './small-parts.tsx';
import { placeWords } from './words.ts';

const optionsOf = <Value extends string>(names: Record<Value, string>) =>
  (Object.entries(names) as [Value, string][]).map(([value, label]) => ({ value, label }));

type Properties = {
  link: Link;
  chain: Chain;
  pointer: string;
  problem: Problem | null;
  onChange: (link: Link) => void;
  /** Left out where it is taken away elsewhere. */
  onRemove?: () => void;
};

/** One cable: between which sockets, and what it is; folded away unless something is wrong with it. */
export function LinkForm(properties: Properties) {
  const { link, chain, pointer, problem } = properties;
  const nameOf = (id: string) => chain.devices.find((device) => device.id === id)?.name ?? '?';
  const isFaulty = (problem?.errors ?? []).some(
    (error) => error.pointer === pointer || error.pointer.startsWith(`${pointer}/`),
  );
  return (
    <details class="part-form" open={isFaulty || link.from.deviceId === '' || undefined}>
      <summary>
        <strong>{link.id}</strong>
        <span>
          {nameOf(link.from.deviceId)} → {nameOf(link.to.deviceId)}
        </span>
        <span class="soft">
          {number(link.lengthM, 1)} m, {terms().construction[link.construction]}
        </span>
      </summary>
      <LinkFields {...properties} />
    </details>
  );
}

/** What can be said of a cable. */
export function LinkFields({ link, chain, pointer, problem, onChange, onRemove }: Properties) {
  const t = placeWords();
  const change = (part: Partial<Link>) => onChange({ ...link, ...part });
  const sockets = (direction: Port['direction']) => [
    { value: ' ', label: t.choose },
    ...chain.devices.flatMap((device) =>
      device.ports
        .filter((port) => port.direction === direction)
        .map((port) => ({
          value: refKey({ deviceId: device.id, portId: port.id }),
          label: `${device.name} · ${port.label}`,
        })),
    ),
  ];
  const refOf = (key: string) => {
    const [deviceId = '', portId = ''] = key.split(' ');
    return { deviceId, portId };
  };
  const faults = faultsWithin(problem, pointer, [
    'lengthM',
    'from',
    'to',
    'rated/gbps',
    'rated/lengthM',
    'gaugeAwg',
    'couplers',
  ]);
  return (
    <fieldset class="part-fields">
      <legend class="for-readers-only">{t.linkNo(link.id)}</legend>
      <Faults texts={faults} />
      <div class="three">
        <SelectField
          label={t.from}
          options={sockets('output')}
          error={faultAt(problem, `${pointer}/from`)}
          value={refKey(link.from)}
          onChoose={(key) => change({ from: refOf(key) })}
        />
        <SelectField
          label={t.to}
          options={sockets('input')}
          error={faultAt(problem, `${pointer}/to`)}
          value={refKey(link.to)}
          onChoose={(key) => change({ to: refOf(key) })}
        />
        <Field
          label={t.length}
          type="number"
          step="any"
          error={faultAt(problem, `${pointer}/lengthM`)}
          value={link.lengthM}
          onInput={({ currentTarget }) => change({ lengthM: currentTarget.valueAsNumber || 0 })}
        />
        <SelectField
          label={t.construction}
          options={optionsOf(terms().construction)}
          value={link.construction}
          onChoose={(construction) => change({ construction })}
        />
        <SelectField
          label={t.category}
          options={optionsOf(categoryChoices())}
          value={link.category}
          onChoose={(category) => change({ category })}
        />
        <SelectField
          label={t.route}
          options={optionsOf(t.routes)}
          value={link.route}
          onChoose={(route) => change({ route })}
        />
        <RatedFields link={link} pointer={pointer} problem={problem} onChange={onChange} />
      </div>
      <div class="row">
        <Tick label={t.certified} isOn={link.certified} onChange={(certified) => change({ certified })} />
        {onRemove !== undefined && (
          <Button kind="quiet" onClick={onRemove}>
            {t.removeLink(link.id)}
          </Button>
        )}
      </div>
    </fieldset>
  );
}

/** What is printed on a cable or in its data sheet; what nobody looked up stays out of the record. */
function RatedFields({
  link,
  pointer,
  problem,
  onChange,
}: {
  link: Link;
  pointer: string;
  problem: Problem | null;
  onChange: (link: Link) => void;
}) {
  const t = placeWords();
  const { rated, gaugeAwg, couplers } = link;
  const put = (name: 'rated' | 'gaugeAwg' | 'couplers', value: Link[typeof name]): void => {
    const { [name]: _, ...others } = link;
    onChange({ ...others, ...(value === undefined ? {} : { [name]: value }) });
  };
  const field = (
    label: string,
    at: string,
    value: number | null | undefined,
    set: (typed: number | undefined) => void,
  ) => (
    <Field
      label={label}
      optional
      type="number"
      step="any"
      error={faultAt(problem, `${pointer}/${at}`)}
      value={value ?? ''}
      onInput={({ currentTarget }) => {
        const typed = currentTarget.valueAsNumber;
        set(Number.isNaN(typed) ? undefined : typed);
      }}
    />
  );
  return (
    <>
      {field(t.ratedGbps, 'rated/gbps', rated?.gbps, (gbps) =>
        put('rated', gbps === undefined ? undefined : { gbps, lengthM: rated?.lengthM ?? null }),
      )}
      {rated !== undefined &&
        field(t.ratedLength, 'rated/lengthM', rated.lengthM, (lengthM) =>
          put('rated', { ...rated, lengthM: lengthM ?? null }),
        )}
      {field(t.gauge, 'gaugeAwg', gaugeAwg, (awg) => put('gaugeAwg', awg))}
      <SelectField
        label={t.carriesReturnAudio}
        options={optionsOf(t.known)}
        value={link.returnAudio ?? 'unknown'}
        onChoose={(known) => onChange({ ...link, returnAudio: known === 'unknown' ? undefined : known })}
      />
      {field(t.couplers, 'couplers', couplers, (count) => put('couplers', count))}
    </>
  );
}
