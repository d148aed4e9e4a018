import '@fontsource-variable/archivo/wdth.css';
import '@fontsource-variable/besley/index.css';
import './app.css';
import { mount } from 'svelte';
import App from './App.svelte';
import { startSession } from './state/session.svelte';

const target = document.getElementById('app');
if (target) {
  mount(App, { target });
  void startSession(new URLSearchParams(location.search));
}
