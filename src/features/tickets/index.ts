export { appendTicketEvent } from './append-event.ts';
export { ticketRoutes } from './routes.ts';
