using FsCheck.Xunit;

namespace PlatformForge.Tests;

/// <summary>A property whose cases each take a tenth of a second and more: few in every run of the tests, as many as are stated in the gate
/// (<see cref="Simulations"/>).</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class SimulatedPropertyAttribute : PropertyAttribute
{
    public SimulatedPropertyAttribute(int usual) => MaxTest = Simulations.Of(usual, usual);
}
