import type { Device, DeviceRole, Port } from '../../../../shared/contract/chain.ts';
import { returnAudioKinds, threeStates } from '../../../../shared/contract/chain-names.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { Button } from '../../parts/button.tsx';
import { faultAt, faultsWithin } from '../../parts/fault-at.ts';
import { Field, SelectField } from '../../parts/field.tsx';
import { Tick } from '../../parts/tick.tsx';
import { modeKey, modeName, modeOf, newPort, usualModes } from '../../place/chain-edits.ts';
import { terms } from '../../words/terms.ts';
import { PassesFields } from './passes-fields.tsx';
import { Faults } from './small-parts.tsx';
import { placeWords } from './words.ts';

type Properties = {
  device: Device;
  pointer: string;
  problem: Problem | null;
  onChange: (device: Device) => void;
  /** Left out where it is taken away elsewhere. */
  onRemove?: () => void;
};

/** One device and its sockets; folded away unless something is wrong with it. */
export function DeviceForm(properties: Properties) {
  const { device, pointer, problem } = properties;
  const isFaulty = (problem?.errors ?? []).some(
    (error) => error.pointer === pointer || error.pointer.startsWith(`${pointer}/`),
  );
  return (
    <details class="part-form" open={isFaulty || undefined}>
      <summary>
        <strong>{device.name}</strong>
        <span class="soft">
          {terms().role[device.role]} {device.model ?? ''}
        </span>
      </summary>
      <DeviceFields {...properties} />
    </details>
  );
}

/** What can be said of a device, and its sockets. */
export function DeviceFields({ device, pointer, problem, onChange, onRemove }: Properties) {
  const t = placeWords();
  const change = (part: Partial<Device>) => onChange({ ...device, ...part });
  const text = (label: string, field: 'model' | 'serial' | 'firmware') => (
    <Field
      label={label}
      optional
      maxLength={longest.line}
      error={faultAt(problem, `${pointer}/${field}`)}
      value={device[field] ?? ''}
      onInput={({ currentTarget }) =>
        change({ [field]: currentTarget.value.trim() === '' ? null : currentTarget.value })
      }
    />
  );
  const faults = faultsWithin(problem, pointer, ['name', 'model', 'serial', 'firmware', 'notes']);
  return (
    <fieldset class="part-fields">
      <legend class="for-readers-only">{t.deviceOf(device.name)}</legend>
      <Faults texts={faults} />
      <div class="three">
        <Field
          label={t.name}
          required
          maxLength={longest.line}
          error={faultAt(problem, `${pointer}/name`)}
          value={device.name}
          onInput={({ currentTarget }) => change({ name: currentTarget.value })}
        />
        <SelectField
          label={t.role}
          options={(Object.entries(terms().role) as [DeviceRole, string][]).map(([value, label]) => ({
            value,
            label,
          }))}
          value={device.role}
          onChoose={(role) => change({ role })}
        />
        {text(t.model, 'model')}
        {text(t.serial, 'serial')}
        {text(t.firmware, 'firmware')}
      </div>
      <div class="row">
        <Tick label={t.drawsMenu} isOn={device.drawsMenu} onChange={(drawsMenu) => change({ drawsMenu })} />
        <Tick
          label={t.processes}
          isOn={device.processesPicture}
          onChange={(processesPicture) => change({ processesPicture })}
        />
      </div>
      {device.drawsMenu && <MenuFields device={device} onChange={change} />}
      <PassesFields device={device} onChange={change} />
      <h3>{t.ports}</h3>
      {device.ports.map((port, index) => (
        <PortFields
          key={port.id}
          port={port}
          pointer={`${pointer}/ports/${index}`}
          problem={problem}
          onChange={(next) => change({ ports: device.ports.map((one) => (one.id === port.id ? next : one)) })}
          onRemove={() => change({ ports: device.ports.filter(({ id }) => id !== port.id) })}
        />
      ))}
      <div class="row">
        <Button onClick={() => change({ ports: [...device.ports, newPort('input', device.ports)] })}>
          {t.addInput}
        </Button>
        <Button onClick={() => change({ ports: [...device.ports, newPort('output', device.ports)] })}>
          {t.addOutput}
        </Button>
        {onRemove !== undefined && (
          <Button kind="quiet" onClick={onRemove}>
            {t.removeDevice(device.name)}
          </Button>
        )}
      </div>
    </fieldset>
  );
}

/** What the device's menu does by itself: until that is known, a menu that vanishes tells nothing. */
function MenuFields({ device, onChange }: { device: Device; onChange: (part: Partial<Device>) => void }) {
  const t = placeWords();
  const options = threeStates.map((value) => ({ value, label: t.known[value] }));
  return (
    <div class="three">
      <SelectField
        label={t.menuSurvives}
        options={options}
        value={device.menuSurvivesLossOfInput}
        onChoose={(menuSurvivesLossOfInput) => onChange({ menuSurvivesLossOfInput })}
      />
      <SelectField
        label={t.menuKeepsFormat}
        options={options}
        value={device.menuKeepsFormat}
        onChoose={(menuKeepsFormat) => onChange({ menuKeepsFormat })}
      />
    </div>
  );
}

function PortFields({
  port,
  pointer,
  problem,
  onChange,
  onRemove,
}: {
  port: Port;
  pointer: string;
  problem: Problem | null;
  onChange: (port: Port) => void;
  onRemove: () => void;
}) {
  const t = placeWords();
  const now = modeKey(port.highestMode);
  const modes = usualModes.some((mode) => modeKey(mode) === now)
    ? usualModes
    : [port.highestMode, ...usualModes];
  return (
    <div class="three port-fields">
      <Field
        label={t.portLabel}
        required
        maxLength={longest.line}
        error={faultAt(problem, `${pointer}/label`) ?? faultAt(problem, pointer)}
        value={port.label}
        onInput={({ currentTarget }) => onChange({ ...port, label: currentTarget.value })}
      />
      <SelectField
        label={t.direction}
        options={[
          { value: 'input', label: t.input },
          { value: 'output', label: t.output },
        ]}
        value={port.direction}
        onChoose={(direction) => onChange({ ...port, direction })}
      />
      <SelectField
        label={t.mode}
        options={modes.map((mode) => ({ value: modeKey(mode), label: modeName(mode) }))}
        value={now}
        onChoose={(key) => onChange({ ...port, highestMode: modeOf(key) })}
      />
      <SelectField
        label={t.returnAudio}
        options={(['unknown', ...returnAudioKinds] as const).map((value) => ({
          value,
          label: t.returnAudioKinds[value],
        }))}
        value={port.returnAudio ?? 'unknown'}
        onChoose={(kind) => onChange({ ...port, returnAudio: kind === 'unknown' ? undefined : kind })}
      />
      <Button kind="quiet" onClick={onRemove}>
        {t.removePort(port.label)}
      </Button>
    </div>
  );
}
