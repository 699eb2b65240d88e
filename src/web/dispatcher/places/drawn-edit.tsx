import { useEffect, useRef } from 'preact/hooks';
import type { Chain, Place } from '../../../../shared/contract/chain.ts';
import { deviceRoles } from '../../../../shared/contract/chain-names.ts';
import type { Problem } from '../../../../shared/contract/problem.ts';
import { ChainDrawing } from '../../drawing/chain-drawing.tsx';
import type { Marks } from '../../drawing/marks.ts';
import { Button } from '../../parts/button.tsx';
import { newDevice } from '../../place/chain-edits.ts';
import { goalsOf, withoutPlace } from '../../place/connect.ts';
import { placeWord } from '../../place/place-words.ts';
import { terms } from '../../words/terms.ts';
import { ChainForm } from './chain-form.tsx';
import { type EditFault, faultsOf } from './edit-faults.ts';
import { EditPanel } from './edit-panel.tsx';
import { nameOfNew, tapped } from './edit-taps.ts';
import { editWords } from './edit-words.ts';
import { PickPanel } from './pick-panel.tsx';
import { type ChainEdits, useChainEdits } from './use-chain-edits.ts';
import '../../place/place.css';
import './drawn-edit.css';

type Properties = { chain: Chain; problem: Problem | null; onChange: (chain: Chain) => void };

/**
 * A chain changed on its drawing, by mouse, finger or keys: what is tapped opens with all that can be done with it;
 * what is plugged elsewhere finds its socket by the next tap. What can't be so is said where it is, before it is saved.
 */
export function DrawnEdit({ chain, problem, onChange }: Properties) {
  const t = editWords();
  const edits = useChainEdits(chain, onChange, t.wasUndone);
  const faults = faultsOf(chain, problem);
  const drawing = useRef<HTMLDivElement>(null);
  // Whoever chooses where to plug it needs the drawing, and none of what sticks to the screen's edges over it.
  const { start, turn } = edits;
  useEffect(() => {
    if (start !== null)
      drawing.current?.querySelector('.drawing-window')?.scrollIntoView({ block: 'center' });
  }, [start, turn]);
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: keys for what has buttons, too
    <div class="stack drawn-edit" onKeyDown={(event) => onKey(event, edits)}>
      <div class="row">
        <Button onClick={() => edits.undo?.()} disabled={edits.undo === null}>
          {t.undo}
        </Button>
        <Button onClick={() => edits.redo?.()} disabled={edits.redo === null}>
          {t.redo}
        </Button>
        <span role="status">{edits.done}</span>
      </div>
      <div class="edit-beside">
        <div ref={drawing}>
          <ChainDrawing
            chain={chain}
            marks={marksOf(edits, faults)}
            selected={edits.place}
            onSelect={(place) => tapped(edits, place)}
          />
        </div>
        <div class="stack">
          {start === null ? (
            <EditPanel edits={edits} faults={faults} problem={problem} />
          ) : (
            <PickPanel edits={edits} start={start} />
          )}
          <Add edits={edits} />
        </div>
      </div>
      <Faults edits={edits} faults={faults} />
      <details class="more">
        <summary>{t.asList}</summary>
        <ChainForm chain={chain} problem={problem} onChange={(next) => edits.type(next, 'list')} />
      </details>
    </div>
  );
}

function marksOf({ chain, start }: ChainEdits, faults: readonly EditFault[]): Marks {
  const goal = start === null ? [] : goalsOf(chain, start);
  return {
    fault: start === null ? faults.map(({ place }) => place) : [],
    goal: goal.map(
      (one): Place =>
        one.kind === 'cable'
          ? { kind: 'link', linkId: one.linkId }
          : { kind: 'device', deviceId: one.at.deviceId },
    ),
  };
}

const typesText = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement ||
  target instanceof HTMLTextAreaElement ||
  target instanceof HTMLSelectElement;

/** Undo and redo as anywhere, Escape out of what is open, Delete for what is selected; all have buttons, too. */
function onKey(event: KeyboardEvent, edits: ChainEdits): void {
  if (typesText(event.target)) return;
  const key = event.key.toLowerCase();
  const isControl = event.ctrlKey || event.metaKey;
  if (isControl && (key === 'y' || (key === 'z' && event.shiftKey))) edits.redo?.();
  else if (isControl && key === 'z') edits.undo?.();
  else if (isControl || event.altKey) return;
  else if (key === 'escape' && edits.start !== null) edits.cancel();
  else if (key === 'escape' && edits.place !== null) edits.select(null);
  else if (key === 'delete' && edits.place !== null && edits.start === null) {
    const name = placeWord(edits.chain, edits.place);
    edits.change(withoutPlace(edits.chain, edits.place), null, editWords().removed(name));
  } else return;
  event.preventDefault();
}

function Add({ edits }: { edits: ChainEdits }) {
  const t = editWords();
  return (
    <details class="more">
      <summary>{t.add}</summary>
      <div class="row">
        {deviceRoles.map((role) => (
          <Button
            key={role}
            onClick={() => {
              const device = newDevice(role, nameOfNew(edits.chain, role), edits.chain);
              edits.change(
                { ...edits.chain, devices: [...edits.chain.devices, device] },
                { kind: 'device', deviceId: device.id },
                t.addedOf(device.name),
              );
            }}
          >
            {t.addOf(terms().role[role])}
          </Button>
        ))}
      </div>
    </details>
  );
}

/** All that has to be put right; what is pressed shows where. */
function Faults({ edits, faults }: { edits: ChainEdits; faults: readonly EditFault[] }) {
  const t = editWords();
  if (faults.length === 0) return <p class="soft">✓ {t.done}</p>;
  return (
    <section class="stack">
      <h3>{t.toMend}</h3>
      <ul class="plain-list">
        {faults.map(({ place, text }) => (
          <li key={text} class="row">
            <span class="field-error">✕ {text}</span>
            <Button kind="quiet" aria-label={`${t.show}: ${text}`} onClick={() => edits.select(place)}>
              {t.show}
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
