import { defineConfig } from 'prisma-cli/config';

// The command-line tool wants to download a native schema engine. `generate`, `validate` and `format` don't
// need one, and a machine without internet can't have one, so any executable path is named to stop the attempt.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath;

export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: process.env.DATABASE_URL ?? 'postgresql://localhost/halfsplit' },
});
