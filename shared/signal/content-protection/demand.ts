import type { VideoFormat } from '../../contract/chain.ts';
import type { ContentDemand } from './hop.ts';

/**
 * What protected content of a format asks for: stream type 1 is set on what is above high definition, or has HDR (common
 * practice, no source); below that, sources are content with any version.
 */
export const demandOf = ({ widthPx, heightPx, dynamicRange }: VideoFormat): ContentDemand =>
  widthPx > 1920 || heightPx > 1200 || (dynamicRange !== undefined && dynamicRange !== 'sdr')
    ? 'type1'
    : 'type0';
