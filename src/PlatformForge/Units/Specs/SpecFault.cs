namespace PlatformForge.Units.Specs;

/// <summary>Keys of a table that do not go together.</summary>
/// <param name="Under">The key that contradicts others, under the table's; null where the table says too little, or too much, as a whole.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="Remedy">What would be right.</param>
/// <param name="Cure">The same as a change to the file.</param>
public sealed record SpecFault(string? Under, string Message, string Remedy, Cure? Cure = null);
