/** What stands on the page when there is no plan to show. */
export function NoPlan({ reason }: { reason: string }) {
  return (
    <main className="page" id="content">
      <div className="title">
        <h1>Nothing planned yet</h1>
      </div>
      <p>The page got no plan to compute: {reason}</p>
      <p className="quiet">Start it again with a plan file; examples stand in the folder examples.</p>
    </main>
  );
}
