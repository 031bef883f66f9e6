namespace PlatformForge.Sections.Forecasts;

/// <summary>What the rings round one layer measure.</summary>
/// <param name="Count">How many.</param>
/// <param name="Length">All together, mm.</param>
/// <param name="Area">What they enclose, holes taken off, mm².</param>
/// <param name="OuterSeconds">Time to go round each once at the speed of outer walls.</param>
/// <param name="InnerSeconds">The same at the speed of inner walls.</param>
internal readonly record struct LayerRings(int Count, double Length, double Area, double OuterSeconds, double InnerSeconds);
