import type { Chain, Device, DeviceRole, Link } from '../../../../shared/contract/chain.ts';
import { deviceRoles } from '../../../../shared/contract/chain-names.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { Button } from '../../parts/button.tsx';
import { faultAt } from '../../parts/fault-at.ts';
import { Field } from '../../parts/field.tsx';
import { newDevice, newLink, withoutDevice } from '../../place/chain-edits.ts';
import { terms } from '../../words/terms.ts';
import { DeviceForm } from './device-form.tsx';
import { LinkForm } from './link-form.tsx';
import { WantedFormats } from './wanted-formats.tsx';
import { placeWords } from './words.ts';

/** The whole chain as forms; what the API found wrong stands where it is wrong. */
export function ChainForm({
  chain,
  problem,
  onChange,
}: {
  chain: Chain;
  problem: Problem | null;
  onChange: (chain: Chain) => void;
}) {
  const t = placeWords();
  const setDevice = (next: Device) =>
    onChange({ ...chain, devices: chain.devices.map((device) => (device.id === next.id ? next : device)) });
  const setLink = (next: Link) =>
    onChange({ ...chain, links: chain.links.map((link) => (link.id === next.id ? next : link)) });
  const add = (role: DeviceRole) => {
    const same = chain.devices.filter((device) => device.role === role).length;
    const name = terms().role[role] + (same === 0 ? '' : ` ${same + 1}`);
    onChange({ ...chain, devices: [...chain.devices, newDevice(role, name, chain)] });
  };
  return (
    <div class="stack place-form">
      <Field
        label={t.chainName}
        required
        maxLength={longest.line}
        error={faultAt(problem, '/name')}
        value={chain.name}
        onInput={({ currentTarget }) => onChange({ ...chain, name: currentTarget.value })}
      />
      <h2>{t.devices}</h2>
      {chain.devices.map((device, index) => (
        <DeviceForm
          key={device.id}
          device={device}
          pointer={`/devices/${index}`}
          problem={problem}
          onChange={setDevice}
          onRemove={() => onChange(withoutDevice(chain, device.id))}
        />
      ))}
      <div class="row">
        {deviceRoles.map((role) => (
          <Button key={role} onClick={() => add(role)}>
            {t.addDevice(terms().role[role])}
          </Button>
        ))}
      </div>
      <h2>{t.links}</h2>
      {chain.links.map((link, index) => (
        <LinkForm
          key={link.id}
          link={link}
          chain={chain}
          pointer={`/links/${index}`}
          problem={problem}
          onChange={setLink}
          onRemove={() => onChange({ ...chain, links: chain.links.filter(({ id }) => id !== link.id) })}
        />
      ))}
      <div>
        <Button onClick={() => onChange({ ...chain, links: [...chain.links, newLink(chain)] })}>
          {t.addLink}
        </Button>
      </div>
      <WantedFormats chain={chain} onChange={onChange} />
    </div>
  );
}
