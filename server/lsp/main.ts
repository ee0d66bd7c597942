import { createConnection, ProposedFeatures } from 'vscode-languageserver/node.js';
import { startServer } from './server.js';

startServer(createConnection(ProposedFeatures.all, process.stdin, process.stdout));
