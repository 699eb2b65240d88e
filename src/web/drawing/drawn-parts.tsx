import { useMemo } from 'preact/hooks';
import { findPort } from '../../../shared/chain/look-up.ts';
import type { Chain, Link, Place } from '../../../shared/contract/chain.ts';
import { BranchShape } from './branch-shape.tsx';
import { DeviceShape } from './device-shape.tsx';
import type { Box, Branch, Line } from './fit.ts';
import { focusOf } from './focus.ts';
import { opened } from './fold.ts';
import { BundleShape, LinkShape } from './link-shape.tsx';
import { type Mark, type Marks, markSigns, marksAt, type Sign } from './marks.ts';
import type { Laid } from './use-layout.ts';
import { drawingWords } from './words.ts';

export type DrawnProperties = {
  chain: Chain;
  marks: Marks;
  selected: Place | null;
  onSelect: ((place: Place) => void) | undefined;
  laid: Laid;
  onOpen: (deviceIds: ReadonlySet<string>) => void;
  onFold: (() => void) | null;
};
type Properties = DrawnProperties & { detail: number };

/** A device of a branch can be pressed by itself from this width on the screen, CSS pixels; else its branch is. */
const pressableFrom = 44;

/** Everything that is drawn, at a scale: cables first, so that devices lie over them. */
export function DrawnParts(properties: Properties) {
  const { laid, chain } = properties;
  const { devices, branches, lines } = laid.layout;
  const byId = useMemo(() => byIdOf(chain), [chain]);
  return (
    <>
      {lines.map((line) => (
        <LineOf key={line.id} line={line} links={byId.links} {...properties} />
      ))}
      {devices.map((box) => (
        <DeviceOf key={box.id} box={box} isSmall={false} byId={byId} {...properties} />
      ))}
      {branches.map((branch) => (
        <BranchOf key={branch.id} branch={branch} byId={byId} {...properties} />
      ))}
    </>
  );
}

const byIdOf = (chain: Chain) => ({
  devices: new Map(chain.devices.map((device) => [device.id, device])),
  links: new Map(chain.links.map((link) => [link.id, link])),
});
type ById = ReturnType<typeof byIdOf>;

function DeviceOf(properties: Properties & { box: Box; isSmall: boolean; byId: ById }) {
  const { box, isSmall, byId, marks, detail, selected, onSelect } = properties;
  const device = byId.devices.get(box.id);
  if (device === undefined) return null;
  const found = marksAt(marks, 'device', box.id);
  const isReached = !isSmall || box.width * detail >= pressableFrom;
  return (
    <DeviceShape
      {...{ box, device, detail, isSmall }}
      signs={found}
      isSelected={selected?.kind === 'device' && selected.deviceId === box.id}
      onSelect={isReached ? onSelect : undefined}
    />
  );
}

function LineOf({
  line,
  links,
  ...properties
}: Properties & { line: Line; links: ReadonlyMap<string, Link> }) {
  const { chain, marks, detail, selected, onSelect } = properties;
  const t = drawingWords();
  const [first, ...others] = line.linkIds;
  const link = links.get(first ?? '');
  if (link === undefined) return null;
  if (others.length > 0) return <BundleShape line={line} detail={detail} />;
  const nameOf = (id: string): string => chain.devices.find((device) => device.id === id)?.name ?? id;
  const socket = (end: Link['from']): string => findPort(chain, end)?.label ?? end.portId;
  const found = marksAt(marks, 'link', link.id);
  return (
    <LinkShape
      {...{ line, link, detail, onSelect }}
      sockets={`${socket(link.from)} → ${socket(link.to)}`}
      label={t.link(
        link.id,
        { from: nameOf(link.from.deviceId), to: nameOf(link.to.deviceId) },
        String(link.lengthM),
      )}
      signs={found}
      isSelected={selected?.kind === 'link' && selected.linkId === link.id}
    />
  );
}

function BranchOf({ branch, ...properties }: Properties & { branch: Branch; byId: ById }) {
  const { chain, marks, detail, onOpen } = properties;
  const counts = new Map<Mark, number>();
  const count = (found: readonly Sign[]) => {
    for (const { mark } of found) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  };
  for (const id of branch.deviceIds) count(marksAt(marks, 'device', id));
  for (const id of branch.innerLinkIds) count(marksAt(marks, 'link', id));
  const open = () => onOpen(opened(chain, branch, (part, most) => focusOf(part, new Map(), most)));
  return (
    <BranchShape
      branch={branch}
      detail={detail}
      marked={[...counts].map(([mark, number]) => ` · ${markSigns[mark]} ${number}`).join('')}
      onOpen={open}
    >
      {branch.devices.map((box) => (
        <DeviceOf key={box.id} box={box} isSmall {...properties} />
      ))}
    </BranchShape>
  );
}
