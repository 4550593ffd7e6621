/** What the worker for long work can do. */
import { type Jobs, languageJobs } from '@tautline/language/server';
import { explore, exploreJob } from './explore-job.ts';
import { glb, glbJob } from './glb-job.ts';
import { review, reviewJob } from './review-job.ts';

export const jobs: Jobs = { ...languageJobs, [exploreJob]: explore, [glbJob]: glb, [reviewJob]: review };
