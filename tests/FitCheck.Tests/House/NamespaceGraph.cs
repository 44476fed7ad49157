using Mono.Cecil;
using Mono.Cecil.Cil;
using Mono.Cecil.Rocks;

namespace FitCheck.Tests.House;

/// <summary>Which namespace uses which, read from compiled assemblies: every type with its members, their bodies and attributes.</summary>
internal sealed class NamespaceGraph
{
    private readonly HashSet<string> _own;
    private readonly SortedDictionary<(string From, string To), SortedSet<string>> _uses = [];

    public NamespaceGraph(IEnumerable<string> assemblies)
    {
        var modules = assemblies.Select(a => ModuleDefinition.ReadModule(a)).ToList();
        _own = modules.Select(m => m.Assembly.Name.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var module in modules)
        {
            foreach (var type in module.GetAllTypes())
                Read(type);
            module.Dispose();
        }
    }

    /// <summary>The types that make one namespace use another, as `User -> Used`.</summary>
    public IReadOnlyDictionary<(string From, string To), SortedSet<string>> Uses => _uses;

    /// <summary>Every set of namespaces that use each other round in a circle.</summary>
    public IReadOnlyList<IReadOnlyList<string>> Cycles() => Cycles(_uses.Keys);

    /// <summary>The sets of two and more names that lead to each other round in a circle.</summary>
    public static IReadOnlyList<IReadOnlyList<string>> Cycles(IEnumerable<(string From, string To)> uses)
    {
        var next = uses.ToLookup(u => u.From, u => u.To, StringComparer.Ordinal);
        var reached = next.Select(n => n.Key).ToDictionary(n => n, n => From(n, next), StringComparer.Ordinal);
        return
        [
            .. reached.Keys.Select(n => reached[n].Where(o => reached.TryGetValue(o, out var back) && back.Contains(n)).Append(n)
                    .Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList())
                .Where(c => c.Count > 1).DistinctBy(c => string.Join(' ', c), StringComparer.Ordinal),
        ];
    }

    private static HashSet<string> From(string start, ILookup<string, string> next)
    {
        var (seen, waiting) = (new HashSet<string>(StringComparer.Ordinal), new Stack<string>(next[start]));
        while (waiting.TryPop(out var name))
        {
            if (seen.Add(name))
            {
                foreach (var other in next[name])
                    waiting.Push(other);
            }
        }
        return seen;
    }

    private void Read(TypeDefinition type)
    {
        Use(type, type.BaseType);
        foreach (var implemented in type.Interfaces)
            Use(type, implemented.InterfaceType);
        Attributes(type, type);
        Parameters(type, type);
        foreach (var field in type.Fields)
        {
            Use(type, field.FieldType);
            Attributes(type, field);
        }
        foreach (var property in type.Properties)
            Attributes(type, property);
        foreach (var method in type.Methods)
            Read(type, method);
    }

    private void Read(TypeDefinition type, MethodDefinition method)
    {
        Attributes(type, method);
        Parameters(type, method);
        Signature(type, method);
        if (!method.HasBody)
            return;
        foreach (var variable in method.Body.Variables)
            Use(type, variable.VariableType);
        foreach (var caught in method.Body.ExceptionHandlers)
            Use(type, caught.CatchType);
        foreach (var instruction in method.Body.Instructions)
            Read(type, instruction);
    }

    private void Read(TypeDefinition type, Instruction instruction)
    {
        switch (instruction.Operand)
        {
            case TypeReference used:
                Use(type, used);
                break;
            case MethodReference used:
                Use(type, used.DeclaringType);
                Signature(type, used);
                if (used is GenericInstanceMethod generic)
                {
                    foreach (var argument in generic.GenericArguments)
                        Use(type, argument);
                }
                break;
            case FieldReference used:
                Use(type, used.DeclaringType);
                Use(type, used.FieldType);
                break;
        }
    }

    private void Signature(TypeDefinition type, MethodReference method)
    {
        Use(type, method.ReturnType);
        foreach (var parameter in method.Parameters)
            Use(type, parameter.ParameterType);
    }

    private void Parameters(TypeDefinition type, IGenericParameterProvider generic)
    {
        foreach (var constraint in generic.GenericParameters.SelectMany(p => p.Constraints))
            Use(type, constraint.ConstraintType);
    }

    private void Attributes(TypeDefinition type, ICustomAttributeProvider attributed)
    {
        foreach (var attribute in attributed.CustomAttributes)
            Use(type, attribute.AttributeType);
    }

    private void Use(TypeDefinition user, TypeReference? used)
    {
        switch (used)
        {
            case null or GenericParameter:
                return;
            case GenericInstanceType generic:
                foreach (var argument in generic.GenericArguments)
                    Use(user, argument);
                Use(user, generic.ElementType);
                return;
            case TypeSpecification wrapped:
                Use(user, wrapped.ElementType);
                return;
        }
        var scope = used.Scope is ModuleDefinition module ? module.Assembly.Name.Name : used.Scope.Name;
        var (from, to) = (Outermost(user).Namespace, Outermost(used).Namespace);
        if (!_own.Contains(scope) || from.Length == 0 || to.Length == 0 || from == to)
            return;
        if (!_uses.TryGetValue((from, to), out var types))
            _uses[(from, to)] = types = new SortedSet<string>(StringComparer.Ordinal);
        types.Add($"{Outermost(user).Name} -> {Outermost(used).Name}");
    }

    // What the compiler makes of lambdas and loops stands inside the type that has them.
    private static TypeReference Outermost(TypeReference type)
    {
        while (type.DeclaringType is { } outer)
            type = outer;
        return type;
    }
}
