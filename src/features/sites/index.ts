export { placesWithWord } from './places-with-text.read.ts';
export { siteRoutes } from './routes.ts';
export { noSite } from './site-view.ts';
export { readSite } from './sites.read.ts';
export { hasSite } from './sites.ts';
