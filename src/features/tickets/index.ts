export { appendTicketEvent } from './append-event.ts';
export { eraseReports } from './erase-reports.ts';
export { refusalOfForgedErasure } from './forged-erasure.ts';
export { ticketRoutes } from './routes.ts';
