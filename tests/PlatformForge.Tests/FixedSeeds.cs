// The gate must answer the same for the same source, so there every property runs from one seed. Everywhere else seeds are fresh at each
// run, and a failing one is printed to be replayed.
#if FIXED_SEEDS
[assembly: FsCheck.Xunit.Properties(Replay = "20261125,101,20")]
#endif
