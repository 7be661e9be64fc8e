/** Things on the map that can be hidden with the next picture, without being read again by the map's worker. */
import type { FeatureCollection } from 'geojson';
import type { ExpressionSpecification } from 'maplibre-gl';
import { type MapHost, sameData } from './host.ts';

/** Opacity of things in a hideable source. */
export function unlessHidden(opacity = 1): ExpressionSpecification {
  return ['case', ['boolean', ['feature-state', 'hidden'], false], 0, opacity];
}

/**
 * A source whose things get new ids with all new data: what was hidden stays so until the map shows the new data, and these are seen
 * at once.
 */
export function hideable(host: MapHost, source: string) {
  let newest = 0;
  let first = 1;
  let hidden = false;
  let given: FeatureCollection | undefined;
  const show = () => {
    if (hidden) host.map.removeFeatureState({ source });
    hidden = false;
  };
  return {
    put(data: FeatureCollection): void {
      if (sameData(given, data)) {
        show();
        return;
      }
      given = data;
      first = newest + 1;
      const features = data.features.map((feature) => ({ ...feature, id: ++newest }));
      host.source(source, features.length > 0 ? { ...data, features } : data);
      hidden = false;
    },
    /** All, or the ones at these places in the data. */
    hide(places?: readonly number[]): void {
      hidden = true;
      const ids =
        places?.map((place) => first + place) ?? Array.from({ length: newest + 1 - first }, (_, i) => first + i);
      for (const id of ids) host.map.setFeatureState({ source, id }, { hidden: true });
    },
    show,
  };
}
