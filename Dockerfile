# Never built where it was written (no container engine at hand); see README, "Containers".
FROM node:20-bookworm-slim AS manifest
WORKDIR /app
COPY package.json package-lock.json .npmrc ./
COPY prisma prisma

FROM manifest AS build
COPY prisma.config.ts ./
RUN npm ci
COPY . .
RUN npm run build

FROM manifest AS modules
RUN npm ci --omit=dev

FROM node:20-bookworm-slim
ENV NODE_ENV=production HOST=0.0.0.0 HALFSPLIT_DATA=/data
RUN mkdir /data && chown node:node /data
WORKDIR /app
COPY package.json ./
COPY prisma prisma
COPY --from=modules /app/node_modules node_modules
COPY --from=build /app/dist dist
USER node
EXPOSE 8080
HEALTHCHECK --interval=10s --timeout=5s --start-period=60s \
  CMD ["node", "-e", "fetch(`http://127.0.0.1:${process.env.PORT ?? 8080}/readyz`).then((answer) => process.exit(answer.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "--enable-source-maps", "dist/server/main.js"]
