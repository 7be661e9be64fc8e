/** Small changes of what the Posts place is at. */
import type { PostsPage, PostsState } from '../posts-state.ts';
import type { Store } from '../store.ts';

/** Changes members of the Posts place's state. */
export function setPosts(store: Store, change: Partial<PostsState>): void {
  store.set({ posts: { ...store.state.posts, ...change } });
}

export function openPostsPage(store: Store, page: PostsPage): void {
  setPosts(store, { page });
}
