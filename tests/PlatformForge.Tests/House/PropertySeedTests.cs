using System.Reflection;
using FsCheck.Xunit;
using Xunit;

namespace PlatformForge.Tests.House;

/// <summary>Properties run as many cases as they say, in the gate too.</summary>
public class PropertySeedTests
{
    /// <summary>With a size after its seed a property replays one case of that size and leaves out the rest, in silence: right for a case that was found and is
    /// kept, and for nothing else.</summary>
    [Fact]
    public void A_seed_has_a_size_behind_it_only_where_one_case_is_meant()
    {
        var tests = typeof(PropertySeedTests).Assembly;
        (string? Seed, int Cases)[] stated =
        [
            .. tests.GetCustomAttributes<PropertiesAttribute>().Select(a => (a.Replay, a.MaxTest)),
            .. tests.GetTypes().SelectMany(t => t.GetCustomAttributes<PropertiesAttribute>()).Select(a => (a.Replay, a.MaxTest)),
            .. tests.GetTypes().SelectMany(t => t.GetMethods()).SelectMany(m => m.GetCustomAttributes<PropertyAttribute>()).Select(a => (a.Replay, a.MaxTest)),
        ];
        Assert.All(stated.Where(s => !string.IsNullOrEmpty(s.Seed)), s => Assert.Equal(s.Cases == 1 ? 3 : 2, s.Seed!.Split(',').Length));
        string written = File.ReadAllText(Path.Combine(SourceTree.Root, "tests/PlatformForge.Tests/FixedSeeds.cs"));
        Assert.Matches(@"Replay = ""\d+,\d+""", written);
    }
}
