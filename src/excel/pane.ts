/** The pane's page inside Excel; opened in a plain browser it is the same help without Excel. */
import { findIn } from '../pane/help';

findIn(document);
if (typeof Office !== 'undefined') void Office.onReady();
