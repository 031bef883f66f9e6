using PlatformForge.Platforms.Requests;
using PlatformForge.Platforms.Specs;
using PlatformForge.Units;

namespace PlatformForge.Platforms.Values;

/// <summary>Every figure of a spec is a finite number in the range that its key in the project file has: there is one table of both.</summary>
internal static class ValueRules
{
    public static void Check(PlatformSpec spec, PlatformSite site, List<Finding> findings)
    {
        void Range(string key, double value, NumberRange range, string unit)
        {
            if (!range.Holds(value))
            {
                findings.Add(PlatformFindings.OutOfRange(key, value, range, unit));
            }
        }

        Range("layout.rail_top", site.RailTop, PlatformSite.RailTops, "mm");
        Range("layout.scale", site.Scale.Ratio, ModelScale.Ratios, "");
        foreach (var stray in PlatformSpecKeys.All.Stray(spec))
        {
            Range($"{spec.Key}.{stray.Key}", stray.Value, stray.Range, stray.Unit);
        }
    }
}
