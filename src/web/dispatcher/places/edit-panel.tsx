import { useEffect, useRef } from 'preact/hooks';
import { findDevice, findLink, linkAtPort, linksAt } from '../../../../shared/chain/look-up.ts';
import type { Chain, Device, DeviceRole, Link, Place, Port } from '../../../../shared/contract/chain.ts';
import { deviceRoles } from '../../../../shared/contract/chain-names.ts';
import { longest } from '../../../../shared/contract/limits.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { Button } from '../../parts/button.tsx';
import { faultAt } from '../../parts/fault-at.ts';
import { Field } from '../../parts/field.tsx';
import { newDevice } from '../../place/chain-edits.ts';
import { goalsOf, insertedInto, ownerOf, sitsBetween, takenOut, withoutPlace } from '../../place/connect.ts';
import { placeWord } from '../../place/place-words.ts';
import { knownWords } from '../../place/words.ts';
import { terms } from '../../words/terms.ts';
import { DeviceFields } from './device-form.tsx';
import type { EditFault } from './edit-faults.ts';
import { nameOfNew, socketWord } from './edit-taps.ts';
import { editWords } from './edit-words.ts';
import { LinkFields } from './link-form.tsx';
import type { ChainEdits } from './use-chain-edits.ts';
import { WantedFormats } from './wanted-formats.tsx';
import { placeWords } from './words.ts';

type Properties = { edits: ChainEdits; faults: readonly EditFault[]; problem: Problem | null };

const isAt = (fault: EditFault, place: Place): boolean =>
  JSON.stringify(ownerOf(fault.place)) === JSON.stringify(place);

/** What is selected on the drawing, with all that can be done with it; the chain itself where nothing is. */
export function EditPanel({ edits, faults, problem }: Properties) {
  const { chain, place, turn } = edits;
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (turn === 0) return;
    head.current?.focus({ preventScroll: true });
    head.current?.scrollIntoView({ block: 'nearest' });
  }, [turn]);
  const device = place?.kind === 'device' ? findDevice(chain, place.deviceId) : undefined;
  const link = place?.kind === 'link' ? findLink(chain, place.linkId) : undefined;
  const name = place === null ? editWords().wholeChain : placeWord(chain, place);
  const here = faults.filter((fault) => isAt(fault, place ?? { kind: 'chain' }));
  return (
    <section class="place-panel" aria-label={name}>
      <div class="place-panel-head">
        <h3 class="edit-heading" ref={head} tabIndex={-1}>
          {name}
        </h3>
        {place !== null && (
          <Button kind="quiet" onClick={() => edits.select(null)} aria-label={knownWords().close}>
            ✕
          </Button>
        )}
      </div>
      {here.map(({ text }) => (
        <p key={text} class="field-error">
          ✕ {text}
        </p>
      ))}
      {device !== undefined && <OfDevice edits={edits} device={device} problem={problem} />}
      {link !== undefined && <OfLink edits={edits} link={link} problem={problem} />}
      {device === undefined && link === undefined && <OfChain edits={edits} problem={problem} />}
    </section>
  );
}

function OfChain({ edits: { chain, type }, problem }: { edits: ChainEdits; problem: Problem | null }) {
  return (
    <>
      <p>{editWords().hint}</p>
      <Field
        label={placeWords().chainName}
        required
        maxLength={longest.line}
        error={faultAt(problem, '/name')}
        value={chain.name}
        onInput={({ currentTarget }) => type({ ...chain, name: currentTarget.value }, 'name')}
      />
      {chain.wantedFormats.length > 0 && (
        <WantedFormats chain={chain} onChange={(next) => type(next, 'formats')} />
      )}
    </>
  );
}

type DeviceProperties = { edits: ChainEdits; device: Device; problem: Problem | null };
function OfDevice({ edits, device, problem }: DeviceProperties) {
  const t = editWords();
  const { chain } = edits;
  const place: Place = { kind: 'device', deviceId: device.id };
  const out = takenOut(chain, device.id);
  const [into] = linksAt(chain, device.id).filter(({ to }) => to.deviceId === device.id);
  const remove = (next: Chain) => edits.change(next, null, t.removed(device.name));
  return (
    <>
      <h4>{t.sockets}</h4>
      <ul class="plain-list edit-sockets">
        {device.ports.map((port) => (
          <Socket key={port.id} edits={edits} device={device} port={port} />
        ))}
      </ul>
      <div class="row">
        {goalsOf(chain, { kind: 'device', deviceId: device.id }).length > 0 && (
          <Button onClick={() => edits.begin({ kind: 'device', deviceId: device.id })}>{t.moveDevice}</Button>
        )}
        {out !== null && into !== undefined && (
          <Button onClick={() => remove(out.chain)}>{t.takeOut(into.id)}</Button>
        )}
        <Button onClick={() => remove(withoutPlace(chain, place))}>
          {linksAt(chain, device.id).length === 0 ? t.removeAlone : t.removeDevice}
        </Button>
      </div>
      <details class="more">
        <summary>{t.describeDevice}</summary>
        <DeviceFields
          device={device}
          pointer={`/devices/${chain.devices.indexOf(device)}`}
          problem={problem}
          onChange={(next) =>
            edits.type(
              { ...chain, devices: chain.devices.map((one) => (one.id === next.id ? next : one)) },
              `device ${device.id}`,
            )
          }
        />
      </details>
    </>
  );
}

function Socket({ edits, device, port }: { edits: ChainEdits; device: Device; port: Port }) {
  const t = editWords();
  const { chain } = edits;
  const at = { deviceId: device.id, portId: port.id };
  const link = linkAtPort(chain, at);
  const isFrom = port.direction === 'output';
  const here = `${port.label} (${isFrom ? t.output : t.input})`;
  if (link === undefined)
    return (
      <li>
        <span>
          {here}: {t.free}
        </span>
        <Button aria-label={t.connectOf(port.label)} onClick={() => edits.begin({ kind: 'socket', at })}>
          {t.connect}
        </Button>
      </li>
    );
  const other = socketWord(chain, isFrom ? link.to : link.from);
  return (
    <li>
      <span>
        {here}: {t.plugged(link.id, isFrom ? `→ ${other}` : `← ${other}`)}
      </span>
      <Button
        aria-label={t.moveEndOf(link.id, port.label)}
        onClick={() => edits.begin({ kind: 'end', linkId: link.id, end: isFrom ? 'from' : 'to' })}
      >
        {t.moveEnd}
      </Button>
    </li>
  );
}

/** Kinds of device that a signal goes through. */
const between = (chain: Chain): DeviceRole[] =>
  deviceRoles.filter((role) => sitsBetween(newDevice(role, '', chain)));

type LinkProperties = { edits: ChainEdits; link: Link; problem: Problem | null };
function OfLink({ edits, link, problem }: LinkProperties) {
  const t = editWords();
  const { chain } = edits;
  const insert = (role: DeviceRole) => {
    const device = newDevice(role, nameOfNew(chain, role), chain);
    edits.change(
      insertedInto(chain, link.id, device),
      { kind: 'device', deviceId: device.id },
      t.into(device.name, link.id),
    );
  };
  return (
    <>
      <p>
        {socketWord(chain, link.from)} → {socketWord(chain, link.to)}
      </p>
      <div class="row">
        <Button onClick={() => edits.begin({ kind: 'end', linkId: link.id, end: 'from' })}>
          {t.moveFrom}
        </Button>
        <Button onClick={() => edits.begin({ kind: 'end', linkId: link.id, end: 'to' })}>{t.moveTo}</Button>
        <Button
          onClick={() =>
            edits.change(withoutPlace(chain, { kind: 'link', linkId: link.id }), null, t.removed(link.id))
          }
        >
          {t.removeLink}
        </Button>
      </div>
      <details class="more">
        <summary>{t.insert}</summary>
        <div class="row">
          {between(chain).map((role) => (
            <Button key={role} onClick={() => insert(role)}>
              {t.insertOf(terms().role[role])}
            </Button>
          ))}
        </div>
      </details>
      <details class="more">
        <summary>{t.describeLink}</summary>
        <LinkFields
          link={link}
          chain={chain}
          pointer={`/links/${chain.links.indexOf(link)}`}
          problem={problem}
          onChange={(next) =>
            edits.type(
              { ...chain, links: chain.links.map((one) => (one.id === next.id ? next : one)) },
              `link ${link.id}`,
            )
          }
        />
      </details>
    </>
  );
}
