export { appendTicketEvent } from './append-event.ts';
export { refusalOfForgedErasure } from './forged-erasure.ts';
export { ticketRoutes } from './routes.ts';
