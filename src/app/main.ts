/** Where the app starts. */
import { followSeason } from './actions/season-follow.ts';
import { followVisits } from './actions/visit-log.ts';
import './elements/app/app.ts';
import { startOffline } from './offline/update.ts';

const app = document.querySelector('mp-app');
if (app) {
  followVisits(app.store);
  followSeason(app.store);
  // While the app is being worked on the browser must always fetch the newest file.
  if (import.meta.env.PROD) void startOffline(app.store);
}
