namespace PlatformForge.Track.Surveys.Fitting;

/// <summary>What a fitter has found.</summary>
/// <param name="Fits">The fits in question; the one to state first.</param>
/// <param name="Costs">Their costs, which weigh them.</param>
/// <param name="LeftOut">Indices of the readings that the first leaves out as misread.</param>
/// <param name="InDoubt">Indices of the readings that the first meets and that may be misread all the same.</param>
/// <param name="Without">A fit that leaves those in doubt out; null where there are none.</param>
internal sealed record FittedShapes(IReadOnlyList<ExactFit> Fits, IReadOnlyList<double> Costs, int[] LeftOut, int[] InDoubt, ExactFit? Without);
