import { Dialog } from '../../parts/dialog.tsx';
import { AssignForm } from './assign-form.tsx';

/** Gives a ticket to somebody else or to another time, over the screen that lists it. */
export function AssignDialog({
  name,
  ticketId,
  onClose,
}: {
  name: string;
  ticketId: string;
  onClose: () => void;
}) {
  return (
    <Dialog title={name} onClose={onClose}>
      <AssignForm ticketId={ticketId} onDone={onClose} />
    </Dialog>
  );
}
