import { type Logger, pino, stdTimeFunctions } from 'pino';

const secrets = [
  'req.headers.authorization',
  'req.headers.cookie',
  'headers.authorization',
  'password',
  '*.password',
  'accessToken',
  '*.accessToken',
  'refreshToken',
  '*.refreshToken',
];

/** The server's log: JSON lines, ISO 8601 times, no secrets. */
export function createLogger(level: string): Logger {
  return pino({
    level,
    timestamp: stdTimeFunctions.isoTime,
    redact: { paths: secrets, censor: '[kept out]' },
  });
}
