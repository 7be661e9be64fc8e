/** Where the app starts. */
import './elements/app/app.ts';
