using ArchUnitNET.Domain;
using ArchUnitNET.Loader;

namespace PlatformForge.Tests.House;

/// <summary>The library's types and what they use, read once for all tests that ask: reading them takes seconds, and finding tests need not wait for
/// it.</summary>
internal static class LoadedHouse
{
    private static readonly Lazy<Architecture> Once = new(() => new ArchLoader().LoadAssemblies(Library).Build());

    public static System.Reflection.Assembly Library { get; } = typeof(PlatformForge.Units.Finding).Assembly;

    public static Architecture Types => Once.Value;
}
