export { appendTicketEvent, refusalOfNews } from './append-event.ts';
export { checkLogs } from './check-logs.ts';
export { eraseReports } from './erase-reports.ts';
export { refusalOfForgedErasure } from './forged-erasure.ts';
export { ticketRoutes } from './routes.ts';
