using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Emit;
using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;

namespace PriceFloor.Api.Tests.Conventions;

/// <summary>
/// Which namespaces of an assembly use which others, read from its compiled code: signatures, fields, attributes and method bodies.
/// </summary>
public sealed class FolderGraph : IDisposable
{
    private static readonly Dictionary<ushort, OperandType> s_operands =
        typeof(OpCodes).GetFields().Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => (ushort)code.Value, code => code.OperandType);

    private readonly PEReader _file;
    private readonly MetadataReader _metadata;
    private readonly TypesIn _types;

    private FolderGraph(Assembly assembly)
    {
        _file = new PEReader(File.OpenRead(assembly.Location));
        _metadata = _file.GetMetadataReader();
        _types = new TypesIn();
    }

    /// <summary>For each namespace, the others that it uses, each with one of the uses: "A -> B".</summary>
    public static IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> Of(Assembly assembly)
    {
        using var graph = new FolderGraph(assembly);
        var uses = graph.Uses().Where(use => use.From.StartsWith("PriceFloor.", StringComparison.Ordinal) && use.From != use.To).ToList();
        return uses.GroupBy(use => use.From).ToDictionary(from => from.Key, from =>
            (IReadOnlyDictionary<string, string>)from.GroupBy(use => use.To).ToDictionary(to => to.Key, to => to.First().Example));
    }

    public void Dispose() => _file.Dispose();

    private IEnumerable<(string From, string To, string Example)> Uses()
    {
        foreach (var handle in _metadata.TypeDefinitions)
        {
            var (from, name) = NameOf(handle);
            foreach (var used in UsedBy(_metadata.GetTypeDefinition(handle)).Distinct())
            {
                var (to, other) = NameOf(used);
                yield return (from, to, $"{name} -> {other}");
            }
        }
    }

    /// <summary>Namespace and name of the outermost type around a type.</summary>
    private (string Namespace, string Name) NameOf(TypeDefinitionHandle handle)
    {
        var type = _metadata.GetTypeDefinition(handle);
        while (type.GetDeclaringType() is { IsNil: false } outer)
            type = _metadata.GetTypeDefinition(outer);
        return (_metadata.GetString(type.Namespace), _metadata.GetString(type.Name));
    }

    private IEnumerable<TypeDefinitionHandle> UsedBy(TypeDefinition type) =>
    [
        .. In(type.BaseType),
        .. type.GetInterfaceImplementations().SelectMany(one => In(_metadata.GetInterfaceImplementation(one).Interface)),
        .. type.GetFields().SelectMany(field => _metadata.GetFieldDefinition(field).DecodeSignature(_types, null)),
        .. type.GetCustomAttributes().SelectMany(attribute => In(_metadata.GetCustomAttribute(attribute).Constructor)),
        .. type.GetMethods().SelectMany(method => UsedBy(_metadata.GetMethodDefinition(method))),
    ];

    private IEnumerable<TypeDefinitionHandle> UsedBy(MethodDefinition method)
    {
        var signature = method.DecodeSignature(_types, null);
        foreach (var type in signature.ParameterTypes.Append(signature.ReturnType).SelectMany(types => types))
            yield return type;
        if (method.RelativeVirtualAddress == 0)
            yield break;
        var body = _file.GetMethodBody(method.RelativeVirtualAddress);
        foreach (var token in TokensIn(body.GetILBytes()!))
            foreach (var type in In(MetadataTokens.EntityHandle(token)))
                yield return type;
    }

    /// <summary>The tokens in the instructions of a method.</summary>
    private static IEnumerable<int> TokensIn(byte[] code)
    {
        for (var at = 0; at < code.Length;)
        {
            ushort instruction = code[at++];
            if (instruction == 0xFE)
                instruction = (ushort)(0xFE00 | code[at++]);
            var operand = s_operands[instruction];
            if (operand is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType)
                yield return BitConverter.ToInt32(code, at);
            at += SizeOf(operand, code, at);
        }
    }

    private static int SizeOf(OperandType operand, byte[] code, int at) => operand switch
    {
        OperandType.InlineNone => 0,
        OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
        OperandType.InlineVar => 2,
        OperandType.InlineI8 or OperandType.InlineR => 8,
        OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
        _ => 4,
    };

    private IEnumerable<TypeDefinitionHandle> In(EntityHandle handle) => handle.IsNil ? [] : handle.Kind switch
    {
        HandleKind.TypeDefinition => [(TypeDefinitionHandle)handle],
        HandleKind.TypeSpecification => _metadata.GetTypeSpecification((TypeSpecificationHandle)handle).DecodeSignature(_types, null),
        HandleKind.MethodDefinition => [_metadata.GetMethodDefinition((MethodDefinitionHandle)handle).GetDeclaringType()],
        HandleKind.FieldDefinition => [_metadata.GetFieldDefinition((FieldDefinitionHandle)handle).GetDeclaringType()],
        HandleKind.MemberReference => In(_metadata.GetMemberReference((MemberReferenceHandle)handle).Parent),
        HandleKind.MethodSpecification => InGeneric(_metadata.GetMethodSpecification((MethodSpecificationHandle)handle)),
        _ => [],
    };

    private IEnumerable<TypeDefinitionHandle> InGeneric(MethodSpecification method) =>
        In(method.Method).Concat(method.DecodeSignature(_types, null).SelectMany(types => types));

    /// <summary>The assembly's own types in a signature.</summary>
    private sealed class TypesIn : ISignatureTypeProvider<ImmutableArray<TypeDefinitionHandle>, object?>
    {
        public ImmutableArray<TypeDefinitionHandle> GetArrayType(ImmutableArray<TypeDefinitionHandle> elementType, ArrayShape shape) => elementType;

        public ImmutableArray<TypeDefinitionHandle> GetByReferenceType(ImmutableArray<TypeDefinitionHandle> elementType) => elementType;

        public ImmutableArray<TypeDefinitionHandle> GetFunctionPointerType(MethodSignature<ImmutableArray<TypeDefinitionHandle>> signature) => [];

        public ImmutableArray<TypeDefinitionHandle> GetGenericInstantiation(
            ImmutableArray<TypeDefinitionHandle> genericType, ImmutableArray<ImmutableArray<TypeDefinitionHandle>> typeArguments) =>
            [.. genericType, .. typeArguments.SelectMany(types => types)];

        public ImmutableArray<TypeDefinitionHandle> GetGenericMethodParameter(object? genericContext, int index) => [];

        public ImmutableArray<TypeDefinitionHandle> GetGenericTypeParameter(object? genericContext, int index) => [];

        public ImmutableArray<TypeDefinitionHandle> GetModifiedType(
            ImmutableArray<TypeDefinitionHandle> modifier, ImmutableArray<TypeDefinitionHandle> unmodifiedType, bool isRequired) => unmodifiedType;

        public ImmutableArray<TypeDefinitionHandle> GetPinnedType(ImmutableArray<TypeDefinitionHandle> elementType) => elementType;

        public ImmutableArray<TypeDefinitionHandle> GetPointerType(ImmutableArray<TypeDefinitionHandle> elementType) => elementType;

        public ImmutableArray<TypeDefinitionHandle> GetPrimitiveType(PrimitiveTypeCode typeCode) => [];

        public ImmutableArray<TypeDefinitionHandle> GetSZArrayType(ImmutableArray<TypeDefinitionHandle> elementType) => elementType;

        public ImmutableArray<TypeDefinitionHandle> GetTypeFromDefinition(MetadataReader reader, TypeDefinitionHandle handle, byte rawTypeKind) =>
            [handle];

        public ImmutableArray<TypeDefinitionHandle> GetTypeFromReference(MetadataReader reader, TypeReferenceHandle handle, byte rawTypeKind) => [];

        public ImmutableArray<TypeDefinitionHandle> GetTypeFromSpecification(
            MetadataReader reader, object? genericContext, TypeSpecificationHandle handle, byte rawTypeKind) =>
            reader.GetTypeSpecification(handle).DecodeSignature(this, genericContext);
    }
}
