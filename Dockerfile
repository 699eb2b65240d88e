# Never built where it was written (no container engine at hand); see README, "Containers".
FROM node:20-bookworm-slim AS build
WORKDIR /app
COPY package.json package-lock.json prisma.config.ts .npmrc ./
COPY prisma prisma
RUN npm ci
COPY . .
RUN npm run build && npm prune --omit=dev

FROM node:20-bookworm-slim
ENV NODE_ENV=production
WORKDIR /app
COPY --from=build /app /app
RUN mkdir /data && chown node:node /data
USER node
EXPOSE 8080
CMD ["node", "--import", "tsx", "src/main.ts"]
