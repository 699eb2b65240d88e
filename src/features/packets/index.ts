export { buildPacket } from './build-packet.ts';
export { packetRoutes } from './routes.ts';
